import type { Way, Ways } from './ways.js';

/**
 * For each cell, the height oil must reach to drain to `goal`: the least over all paths of the highest sill
 * on the way. −∞ at the goal, +∞ where no path leads. Only two-way openings count, and only cells for which
 * `inside` holds.
 */
export const drainHeights = (
  ways: Ways,
  sills: ArrayLike<number>,
  goal: number,
  cells: number,
  inside: (cell: number) => boolean = () => true,
): Float64Array => {
  const height = new Float64Array(cells).fill(Number.POSITIVE_INFINITY);
  const done = new Uint8Array(cells);
  const open = [goal];
  height[goal] = Number.NEGATIVE_INFINITY;
  while (open.length > 0) {
    let best = 0;
    for (let k = 1; k < open.length; k++)
      if ((height[open[k] as number] as number) < (height[open[best] as number] as number)) best = k;
    const c = open[best] as number;
    open[best] = open[open.length - 1] as number;
    open.pop();
    if (done[c] === 1) continue;
    done[c] = 1;
    for (const w of ways.at[c] as readonly number[]) {
      const way = ways.list[w] as Way;
      const other = way.from === c ? way.to : way.from;
      if (!way.both || done[other] === 1 || !inside(other)) continue;
      const over = Math.max(height[c] as number, sills[w] as number);
      if (over < (height[other] as number)) {
        height[other] = over;
        open.push(other);
      }
    }
  }
  return height;
};
