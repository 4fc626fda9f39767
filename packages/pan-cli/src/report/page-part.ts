import { type Part, pathBox } from 'pan-core';
import type { PagePart } from '../page/data.js';

const short = (v: number): string => `${Number(v.toFixed(2)) + 0}`;

/** A path as SVG draws it, y down; true arcs stay arcs. */
const drawn = (path: Part['outline']): string => {
  const [first] = path;
  if (first === undefined) return '';
  const at = ([x, y]: readonly [number, number]): string => `${short(x)} ${short(-y)}`;
  const pieces = path.flatMap((piece) => {
    if (piece.kind === 'line') return [`L${at(piece.to)}`];
    // A full turn has no middle for SVG to find: two halves have.
    const full = Math.abs(piece.sweep) > 2 * Math.PI - 1e-9;
    const [cx, cy] = piece.centre;
    const half: readonly [number, number] = [2 * cx - piece.from[0], 2 * cy - piece.from[1]];
    const arc = (to: readonly [number, number], sweep: number): string =>
      `A${short(piece.radius)} ${short(piece.radius)} 0 ${Math.abs(sweep) > Math.PI ? 1 : 0} ${sweep > 0 ? 0 : 1} ${at(to)}`;
    return full ? [arc(half, piece.sweep / 2), arc(piece.to, piece.sweep / 2)] : [arc(piece.to, piece.sweep)];
  });
  return `M${at(first.from)}${pieces.join('')}Z`;
};

const circle = ([x, y]: readonly [number, number], r: number): string => {
  const half = (to: number): string => `A${short(r)} ${short(r)} 0 0 0 ${short(to)} ${short(-y)}`;
  return `M${short(x - r)} ${short(-y)}${half(x + r)}${half(x - r)}Z`;
};

/** Least x and y of an outline as it is drawn, y down. */
const cornerOf = (path: Part['outline']): readonly [number, number] => {
  const { min, max } = pathBox(path);
  return [min[0], -max[1]];
};

/** A part as its sheet on the page shows it. */
export const pagePart = (part: Part): PagePart => ({
  name: part.name,
  what: part.what,
  quantity: part.quantity,
  material: part.material,
  thickness_mm: part.thickness,
  face: part.drawnFace,
  size_mm: part.flat,
  corner: cornerOf(part.outline),
  mass_kg: part.mass,
  outline: drawn(part.outline),
  openings: [...part.openings.map(drawn), ...part.holes.map(({ at, diameter }) => circle(at, diameter / 2))],
  marks: part.marks.map(({ path }) => drawn(path).replace(/Z$/, '')),
  folds: part.folds.map(({ name, from, to, angle, radius, direction }) => ({
    name,
    from: [from[0], -from[1]],
    to: [to[0], -to[1]],
    angle_deg: (angle * 180) / Math.PI,
    radius_mm: radius,
    direction,
  })),
  notes: part.notes,
});
