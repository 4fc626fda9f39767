export interface PanRoom {
  /** Never more than the true least gap around the loosened pan, mm; 0 or less where it meets something. */
  readonly room: number;
  readonly binds: string;
}

/** How far the pan is from one thing, if it is under a limit; else any number from the limit up. */
export interface Gap {
  readonly name: string;
  readonly gap: (limit: number) => number;
}

/** @param first The name of what is likely the nearest: the others need then be known no farther. */
export const leastOf = (pairs: readonly Gap[], enough: number, first = ''): PanRoom =>
  [
    ...pairs.filter(({ name }) => name === first),
    ...pairs.filter(({ name }) => name !== first),
  ].reduce<PanRoom>(
    (least, { name, gap }) => {
      const room = gap(least.room);
      return room < least.room ? { room, binds: name } : least;
    },
    { room: enough, binds: '' },
  );
