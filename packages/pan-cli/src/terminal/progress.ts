/** A line of progress that is there while a run lasts and gone after it. */
export interface Progress {
  /** Share done, 0–1. */
  readonly show: (share: number) => void;
  /** How far it has come in words, where no share can be told. */
  readonly say: (words: string) => void;
  readonly clear: () => void;
}

const FIRST_AFTER = 1000;
const AGAIN_AFTER = 200;

/**
 * Progress for a person at a terminal, from the second a run takes on; nothing for anyone else.
 *
 * @param now milliseconds
 */
export const createProgress = (
  tell: (text: string) => void,
  terminal: boolean,
  now: () => number = Date.now,
): Progress => {
  const start = now();
  let last = start + FIRST_AFTER - AGAIN_AFTER;
  let shown = 0;
  const say = (words: string): void => {
    const time = now();
    if (!terminal || time - last < AGAIN_AFTER) return;
    last = time;
    // Blanks take away what is left of a longer line before it.
    tell(`\r${words.padEnd(shown)}`);
    shown = Math.max(shown, words.length);
  };
  return {
    show: (share) => {
      say(`${Math.floor(100 * Math.min(1, Math.max(0, share)))} % done; Ctrl-C stops. `);
    },
    say,
    clear: () => {
      if (shown > 0) tell(`\r${' '.repeat(shown)}\r`);
      shown = 0;
    },
  };
};
