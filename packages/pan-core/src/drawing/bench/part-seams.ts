import type { Part } from '../../sheet/index.js';
import type { Seam } from '../../weld/index.js';
import type { CutPlan } from '../cut-plan.js';
import { seamPlace } from './seam-place.js';

/** Seams that this part has a share in; of those told of a group of parts, the ones that lie on this one. */
export const seamsOf = ({ seams }: CutPlan, part: Part): readonly Seam[] =>
  seams.filter(
    (seam) =>
      seam.between.some((name) => touches(part, name)) &&
      (seam.between.includes(part.name) || !isElsewhere(part, seam)),
  );

/** A wall that stands clear of the floor, or another piece's stretch: known lines, and none of them on this part. */
const isElsewhere = (part: Part, seam: Seam): boolean =>
  part.faces !== undefined && seam.lines.length > 0 && seamPlace(part, seam) === null;

/** Whether what a seam joins, as its words have it, is this part or a piece of it. */
export const touches = (part: Part, side: string): boolean => {
  const { name } = part;
  // A piece shares the seams of the part that it was cut from.
  if (part.joins?.some(({ whole }) => whole === side)) return true;
  if (side === 'pan') return name.startsWith('belly');
  // A flange in pieces shares the seams of the whole.
  if (side.startsWith('flange')) return name === side || name.startsWith(`${side} `);
  if (side === 'belly and sides') return name.startsWith('belly') || name.startsWith('side ');
  return name === side || name === `${side} strip`;
};
