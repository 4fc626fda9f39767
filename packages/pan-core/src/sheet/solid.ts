import type { Design, Notch, Wing } from '../design/index.js';
import { createPlaneTable } from '../geometry/index.js';
import { dot3, type Vec3 } from '../numeric/index.js';
import { notchPlanes, sideSign, wingPlanes } from '../pan/index.js';
import type { Cutter, HalfSpace } from './cutter.js';

/** A notch as what it takes out of the sheet. */
export const notchCutter = (notch: Notch): Cutter => {
  const table = createPlaneTable();
  return notchPlanes(table, notch).map(({ plane, side }): HalfSpace => {
    const { normal, offset } = table.planes[plane]!;
    const n: Vec3 = [normal[0] * side, normal[1] * side, normal[2] * side];
    return { normal: n, offset: offset * side };
  });
};

/** What a wing takes out of the pan's side plate: between its ends, everything below its top plane. */
export const wingCutter = (design: Design, wing: Wing): Cutter => [
  { normal: [-1, 0, 0], offset: -wing.rear },
  { normal: [1, 0, 0], offset: wing.front },
  wingTop(design, wing),
];

/** The half-space below a wing's top plane. */
export const wingTop = (design: Design, wing: Wing): HalfSpace => {
  const { top } = wingPlanes(design, wing);
  const sign = sideSign(wing.side);
  // z ≤ −top(x, |y|), and top is linear: its slopes follow from three values.
  const base = top(wing.rear, 0);
  const alongX = (top(wing.front, 0) - base) / (wing.front - wing.rear);
  const alongY = top(wing.rear, 1) - base;
  const n: Vec3 = [alongX, sign * alongY, 1];
  const scale = Math.hypot(n[0], n[1], n[2]);
  const normal: Vec3 = [n[0] / scale, n[1] / scale, n[2] / scale];
  return { normal, offset: dot3(normal, [wing.rear, 0, -base]) };
};
