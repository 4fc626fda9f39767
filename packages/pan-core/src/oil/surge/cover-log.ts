/** How the mouth was covered over a run. Times in s, depths in mm. */
export interface MouthCover {
  /** First moment the mouth is bared; null when it never is. */
  readonly timeToBare: number | null;
  /** Least submergence and when; negative: that far bared. */
  readonly least: number;
  readonly leastAt: number;
  /** Time bared in all. */
  readonly baredFor: number;
  /** From first baring until it is covered and stays so; null when it never bares or is still bared at the end. */
  readonly timeToRecover: number | null;
}

export interface CoverLog {
  /** The submergence at a moment; where it changed sign since the last, `crossing` gives the moment it did. */
  readonly note: (t: number, submergence: number, crossing: (from: number, to: number) => number) => void;
  /** A moment at which the submergence jumps. */
  readonly jump: (t: number, submergence: number) => void;
  readonly cover: (end: number) => MouthCover;
}

export const createCoverLog = (): CoverLog => {
  let [lastT, last] = [0, Number.NaN];
  let [least, leastAt] = [Number.POSITIVE_INFINITY, 0];
  let first: number | null = null;
  let since: number | null = null;
  let recovered: number | null = null;
  let total = 0;
  const turn = (t: number, bared: boolean): void => {
    if (bared) {
      first ??= t;
      since = t;
      return;
    }
    if (since !== null) total += t - since;
    since = null;
    recovered = t;
  };
  const take = (t: number, s: number): void => {
    if (s < least) [least, leastAt] = [s, t];
    [lastT, last] = [t, s];
  };
  return {
    note: (t, s, crossing) => {
      if (Number.isNaN(last)) {
        if (s < 0) turn(t, true);
      } else if (s < 0 !== last < 0) turn(crossing(lastT, t), s < 0);
      take(t, s);
    },
    jump: (t, s) => {
      if (!Number.isNaN(last) && s < 0 !== last < 0) turn(t, s < 0);
      take(t, s);
    },
    cover: (end) => ({
      timeToBare: first,
      least,
      leastAt,
      baredFor: total + (since === null ? 0 : end - since),
      timeToRecover: first === null || since !== null || recovered === null ? null : recovered - first,
    }),
  };
};
