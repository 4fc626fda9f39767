import type { SoupLevel } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { NO_TURN, type Stretch } from './scan-stretch.js';

/** A box along the pan's axes that holds part of a scan through a stretch of the engine's movement. */
export interface ScanBox {
  x: number;
  y: number;
  z: number;
  halfX: number;
  halfY: number;
  halfZ: number;
}

/** The box of a node of the tree, through slides and turn; written into `box`. */
export const boxOfNode = (
  box: ScanBox,
  { boxes }: SoupLevel,
  node: number,
  { place, chord }: Stretch,
  height: number,
): void => {
  const o = 6 * node;
  const cx = (boxes[o]! + boxes[o + 3]!) / 2;
  const cy = (boxes[o + 1]! + boxes[o + 4]!) / 2;
  const cz = (boxes[o + 2]! + boxes[o + 5]!) / 2;
  const hx = (boxes[o + 3]! - boxes[o]!) / 2;
  const hy = (boxes[o + 4]! - boxes[o + 1]!) / 2;
  const hz = (boxes[o + 5]! - boxes[o + 2]!) / 2;
  const [a, b, c] = place.matrix;
  const { shift, slideMiddle, slideHalf } = place;
  box.x = a[0] * cx + a[1] * cy + a[2] * cz + shift[0] + slideMiddle[0];
  box.y = b[0] * cx + b[1] * cy + b[2] * cz + shift[1] + slideMiddle[1];
  box.z = c[0] * cx + c[1] * cy + c[2] * cz + shift[2] + slideMiddle[2];
  box.halfX = Math.abs(a[0]) * hx + Math.abs(a[1]) * hy + Math.abs(a[2]) * hz + slideHalf[0];
  box.halfY = Math.abs(b[0]) * hx + Math.abs(b[1]) * hy + Math.abs(b[2]) * hz + slideHalf[1];
  box.halfZ = Math.abs(c[0]) * hx + Math.abs(c[1]) * hy + Math.abs(c[2]) * hz + slideHalf[2];
  carry(box, chord, height);
};

/** The same for one triangle, closer than a box in the scan's own axes would be. */
export const boxOfTriangle = (
  box: ScanBox,
  corners: Float32Array,
  triangle: number,
  { place, chord }: Stretch,
  height: number,
): void => {
  const o = 9 * triangle;
  const [a, b, c] = place.matrix;
  const { shift, slideMiddle, slideHalf } = place;
  // Written out: a search asks this of a great many triangles, and most of them no more.
  const [px, py, pz] = [corners[o]!, corners[o + 1]!, corners[o + 2]!];
  const [qx, qy, qz] = [corners[o + 3]!, corners[o + 4]!, corners[o + 5]!];
  const [rx, ry, rz] = [corners[o + 6]!, corners[o + 7]!, corners[o + 8]!];
  const [x0, x1, x2] = [dot(a, px, py, pz), dot(a, qx, qy, qz), dot(a, rx, ry, rz)];
  const [y0, y1, y2] = [dot(b, px, py, pz), dot(b, qx, qy, qz), dot(b, rx, ry, rz)];
  const [z0, z1, z2] = [dot(c, px, py, pz), dot(c, qx, qy, qz), dot(c, rx, ry, rz)];
  const [lowX, highX] = [Math.min(x0, x1, x2), Math.max(x0, x1, x2)];
  const [lowY, highY] = [Math.min(y0, y1, y2), Math.max(y0, y1, y2)];
  const [lowZ, highZ] = [Math.min(z0, z1, z2), Math.max(z0, z1, z2)];
  box.x = (lowX + highX) / 2 + shift[0] + slideMiddle[0];
  box.y = (lowY + highY) / 2 + shift[1] + slideMiddle[1];
  box.z = (lowZ + highZ) / 2 + shift[2] + slideMiddle[2];
  box.halfX = (highX - lowX) / 2 + slideHalf[0];
  box.halfY = (highY - lowY) / 2 + slideHalf[1];
  box.halfZ = (highZ - lowZ) / 2 + slideHalf[2];
  carry(box, chord, height);
};

const dot = (row: Vec3, x: number, y: number, z: number): number => row[0] * x + row[1] * y + row[2] * z;

const carry = (box: ScanBox, chord: number, height: number): void => {
  if (chord === 0) return;
  const [y, z] = [Math.abs(box.y) + box.halfY, Math.abs(box.z - height) + box.halfZ];
  const carried = chord * Math.sqrt(y * y + z * z);
  box.halfY += carried;
  box.halfZ += carried;
};

/** How much of a box's size the turn makes; more than half of it, and the turn is what to halve. */
export const mostlyTurn = (box: ScanBox, { chord, half }: Stretch, height: number): boolean => {
  const carried = chord * Math.hypot(Math.abs(box.y), Math.abs(box.z - height));
  return half > NO_TURN && 2 * carried > Math.max(box.halfX, box.halfY, box.halfZ);
};

export const cornersOf = ({ x, y, z, halfX, halfY, halfZ }: ScanBox): readonly Vec3[] =>
  [-halfX, halfX].flatMap((dx) =>
    [-halfY, halfY].flatMap((dy) => [-halfZ, halfZ].map((dz): Vec3 => [x + dx, y + dy, z + dz])),
  );
