import type { Part } from '../sheet/index.js';
import type { Seam } from '../weld/index.js';
import type { CutPlan } from './cut-plan.js';

/** Seams that this part has a share in. */
export const seamsOf = ({ seams }: CutPlan, part: Part): readonly Seam[] =>
  seams.filter((seam) => seam.between.some((name) => touches(part, name)));

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
