export type P = readonly [number, number, number];
export interface Block {
  readonly min: P;
  readonly max: P;
}

/** Depth of a point in a union of boxes along the axes: its distance to the nearest empty cell of their grid. */
export const depthIn = (boxes: readonly Block[]): ((p: P) => number) => {
  const lines = ([0, 1, 2] as const).map((k) =>
    [-1e6, ...new Set(boxes.flatMap((b) => [b.min[k], b.max[k]])), 1e6].sort((a, b) => a - b),
  );
  const empty: Block[] = [];
  const [xs, ys, zs] = lines as [number[], number[], number[]];
  for (let i = 0; i + 1 < xs.length; i++)
    for (let j = 0; j + 1 < ys.length; j++)
      for (let k = 0; k + 1 < zs.length; k++) {
        const cell: Block = { min: [xs[i]!, ys[j]!, zs[k]!], max: [xs[i + 1]!, ys[j + 1]!, zs[k + 1]!] };
        const inside = boxes.some((b) =>
          ([0, 1, 2] as const).every((a) => b.min[a] <= cell.min[a] && b.max[a] >= cell.max[a]),
        );
        if (!inside) empty.push(cell);
      }
  return (p) =>
    Math.min(
      ...empty.map((c) =>
        Math.hypot(...([0, 1, 2] as const).map((a) => Math.max(0, c.min[a] - p[a], p[a] - c.max[a]))),
      ),
    );
};
