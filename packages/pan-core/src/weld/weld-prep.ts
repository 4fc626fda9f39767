import type { Design } from '../design/index.js';
import { BAFFLE_GAP, edgePrep, FLANGE_GAP, type PreparedJoint } from '../sheet/index.js';
import type { Seam, SeamPrep } from './seam.js';

/** A seam before its edges are spoken of and its place in the order is known. */
export type BareSeam = Omit<Seam, 'prep' | 'number'>;

/** A seam with its root gap, how that comes about, and how its edges are made ready. */
export const prepared = (design: Design, seam: BareSeam, number: number): Seam => {
  const { material, thickness } = design.pan.sheet;
  const joint = jointOf(seam);
  const row = edgePrep(joint, joint === 'butt of plates' ? design.pan.flange.thickness : thickness, material);
  const gap = row.gap ?? (joint === 'tee' ? BAFFLE_GAP : FLANGE_GAP);
  const prep: SeamPrep = {
    gap,
    fit: fitOf(seam, joint, gap),
    TIG: row.TIG,
    MIG: row.MIG,
    source: row.source,
  };
  return { ...seam, number, prep };
};

const jointOf = ({ joint, step }: BareSeam): PreparedJoint => {
  if (joint !== 'butt') return joint;
  return step === 'plate' ? 'butt of plates' : step === 'flange' ? 'edge run' : 'butt';
};

/** Where the pattern makes the gap, and where hands do. */
const fitOf = ({ step }: BareSeam, joint: PreparedJoint, gap: number): string => {
  switch (joint) {
    case 'butt':
      if (gap === 0) return 'edges touch as cut';
      return step === 'pieces'
        ? 'taken off the pattern, half from each piece'
        : 'not in the pattern: set by tacking, or by filing';
    case 'butt of plates':
      return 'halves touch as cut';
    case 'edge run':
      return 'left by the flange’s opening all round';
    case 'tee':
      return 'left by the baffle’s own clearance';
    case 'ring':
      return 'hole cut to the bung: file until it slides in';
    case 'open corner':
      return 'inside edges touch as cut';
    case 'fillet':
      return 'plate that stops short touches as cut';
  }
};
