import type { SheetSize } from 'pan-core/drawing/nest/sheet-size.js';
import type { Part } from 'pan-core/sheet/index.js';

/**
 * Sheet used by the plainest layout by bounding rectangles: shelves of falling height (Coffman, Garey, Johnson
 * and Tarjan, SIAM J. Comput. 9 (1980), first fit), boxes long side along the sheet, parts with folds as their
 * folds ask, on the strip length that uses least; null when one sheet does not hold them.
 */
export const shelfArea = (parts: readonly Part[], { length, width, edge, gap }: SheetSize): number | null => {
  const boxes = parts
    .flatMap((part) => Array<Part>(part.quantity).fill(part))
    .map((part) => {
      const [x, y] = part.flat;
      const [fold] = part.folds;
      const upright =
        fold !== undefined && Math.abs(fold.to[1] - fold.from[1]) > Math.abs(fold.to[0] - fold.from[0]);
      const [w, h] = fold === undefined ? (x >= y ? [x, y] : [y, x]) : upright ? [x, y] : [y, x];
      return { w: w + gap, h: h + gap };
    })
    .sort((a, b) => b.h - a.h);
  const most = length - 2 * edge + gap;
  let best: number | null = null;
  for (let strip = Math.max(...boxes.map((b) => b.w)); strip <= most + 1; strip += 20) {
    const shelves: { left: number; h: number }[] = [];
    for (const { w, h } of boxes) {
      const shelf = shelves.find((one) => one.left >= w);
      if (shelf === undefined) shelves.push({ left: Math.min(strip, most) - w, h });
      else shelf.left -= w;
    }
    const used: readonly [number, number] = [
      Math.min(strip, most) - Math.min(...shelves.map((one) => one.left)) - gap + 2 * edge,
      shelves.reduce((sum, one) => sum + one.h, 0) - gap + 2 * edge,
    ];
    if (used[1] <= width && (best === null || used[0] * used[1] < best)) best = used[0] * used[1];
  }
  return best;
};
