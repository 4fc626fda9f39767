/** Groups of numbers 0 to n − 1 that grow together. */
export interface Union {
  readonly root: (i: number) => number;
  readonly join: (i: number, j: number) => void;
}

export const createUnion = (n: number): Union => {
  const up = Int32Array.from({ length: n }, (_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (up[r] !== r) r = up[r] as number;
    return r;
  };
  return {
    root,
    join: (i, j) => {
      up[root(j)] = root(i);
    },
  };
};
