import type { Design } from '../design/index.js';
import { pathDistance, polygonOffset } from '../geometry/index.js';
import type { Profile } from '../pan/index.js';
import { FLANGE_GAP, flangeOpening, insideAtRail } from './flange-shape.js';
import type { Mark, RoundHole } from './part.js';

/** Sealing land that has no room for a bead beside the holes, mm: common practice, no source. */
const LEAST_LAND = 3;
/** How far a sheet gasket's inner edge keeps from the opening, mm: common practice, no source. */
const GASKET_BACK = 1;

/** The narrowest metal between opening and holes, or the rail's own land where that is less, mm. */
export const narrowestLand = (design: Design, profile: Profile, holes: readonly RoundHole[]): number => {
  const opening = flangeOpening(design, profile);
  const lands = holes.map(({ at, diameter }) => pathDistance(opening, at) - diameter / 2);
  const { lighten } = design.pan.flange;
  return Math.min(design.engine.rail.land, ...(lighten === null ? [] : [lighten.land]), ...lands);
};

/** What runs round the opening to keep oil in, and the sentence that goes with it. */
export interface SealLine {
  readonly marks: readonly Mark[];
  readonly notes: readonly string[];
}

/** A bead or its groove in the middle of the narrowest land, or the inner edge of a sheet gasket. */
export const sealLine = (design: Design, profile: Profile, holes: readonly RoundHole[]): SealLine => {
  const { gasket, groove } = design.pan.flange;
  const land = narrowestLand(design, profile, holes);
  const loop = (out: number, what: string): Mark => ({
    path: polygonOffset(insideAtRail(design, profile), design.pan.sheet.thickness + FLANGE_GAP + out),
    what,
  });
  if (groove !== null && land > groove.width) {
    const { width, depth } = groove;
    return {
      marks: [loop((land - width) / 2, ''), loop((land + width) / 2, `groove ${width} wide, ${depth} deep`)],
      notes: [
        `Mill the groove between the two marked lines, ${width} mm wide and ${depth} mm deep, once the face is flat.`,
      ],
    };
  }
  if (land < LEAST_LAND) return { marks: [], notes: [] };
  return gasket === 'sealant'
    ? {
        marks: [loop(land / 2, 'sealant bead')],
        notes: ['Sealant in one unbroken line along the mark, inside the bolts.'],
      }
    : {
        marks: [loop(GASKET_BACK, `gasket edge, ${gasket}`)],
        notes: [`The ${gasket} gasket’s inner edge keeps to the marked line.`],
      };
};
