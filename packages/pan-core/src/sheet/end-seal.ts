import type { Design, EndSeal } from '../design/index.js';
import {
  arcSegment,
  lineSegment,
  type Path,
  polylinePath,
  reversePath,
  type Segment,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { endPlateReach, endSealSizes, type Profile, railHalfChord } from '../pan/index.js';
import { planeFacet } from './cutter.js';
import { finishPart } from './finish.js';
import type { Part } from './part.js';

/** Name of the plate at an end, as parts, seams and tables have it. */
export const endSealName = ({ end }: EndSeal): string => `${end} end plate`;

/** Whether a place of the rail lies where an end plate takes the flange's room. */
export const inEndSeal = (design: Design, [x, y]: Vec2): boolean =>
  design.pan.flange.endSeals.some((seal) => {
    const { floor } = design.pan;
    const wall = seal.end === 'front' ? floor[0]![0] : floor[floor.length - 1]![0];
    const beyond = seal.end === 'front' ? x > wall : x < wall;
    return beyond && Math.abs(y - seal.across) < endSealSizes(seal).half;
  });

/** Cuts the flange open from the pan to beyond its edge, as wide as the end plate. */
export const endSealCutter = (seal: EndSeal, profile: Profile, reach: number): Path => {
  const { half } = endSealSizes(seal);
  const wall = (seal.end === 'front' ? profile.sharp[0]! : profile.sharp[profile.sharp.length - 1]!)[0];
  const far = seal.end === 'front' ? wall + reach : wall - reach;
  const [low, high] = [Math.min(wall, far), Math.max(wall, far)];
  const [right, left] = [seal.across - half, seal.across + half];
  return polylinePath(
    [
      [low, right],
      [high, right],
      [high, left],
      [low, left],
    ],
    true,
  );
};

/** The part of a round that hangs below the rail, from its right to its left end as seen from the front. */
const lowerArc = (radius: number, c: number): Segment => {
  const half = railHalfChord(radius, c);
  return arcSegment([0, c], [-half, 0], [half, 0], 2 * Math.acos(c / radius));
};

/** The outline of an end plate, counter-clockwise: along y from the round's middle, and z up from the rail. */
export const endSealOutline = ({ radius, land, centreAboveRail: c }: EndSeal): Path => {
  const [outer, inner] = [lowerArc(radius + land, c), lowerArc(radius, c)];
  return [
    outer,
    lineSegment(outer.to, inner.to),
    ...reversePath([inner]),
    lineSegment(inner.from, outer.from),
  ];
};

/** Where an end plate stands: its face that lies on the pan's end wall, outside. */
export const endSealFrame = (design: Design, seal: EndSeal) => {
  const [x] = endPlateReach(design, seal);
  return {
    origin: [x, seal.across, 0] as const,
    u: [0, 1, 0] as const,
    v: [0, 0, 1] as const,
    normal: [1, 0, 0] as const,
  };
};

/** An end plate: the metal between the seal's arc and one a land larger, its top in the rail plane. */
export const endSealPart = (design: Design, seal: EndSeal): Part => {
  const { radius, centreAboveRail: c, groove } = seal;
  const frame = endSealFrame(design, seal);
  const size = `${groove?.width} mm wide, ${groove?.depth} mm deep`;
  return finishPart({
    name: endSealName(seal),
    what: `Stands across the ${seal.end} end of the flange; the block’s round seals in its arc.`,
    quantity: 1,
    material: design.pan.sheet.material,
    thickness: design.pan.flange.thickness,
    drawnFace: 'either',
    outline: endSealOutline(seal),
    openings: [],
    holes: [],
    folds: [],
    faces: [planeFacet(frame.origin, frame.u, frame.v)],
    marks: groove === null ? [] : [{ path: [lowerArc(radius + groove.depth, c)], what: 'groove bottom' }],
    notes: [
      `Arc R ${radius} mm, its centre ${c} mm above the rail and ${Math.abs(seal.across)} mm ${seal.across < 0 ? 'right of' : seal.across > 0 ? 'left of' : 'from'} the crank’s centre line; measure the block’s round before cutting.`,
      ...(groove === null
        ? []
        : [`Turn or mill the seal’s groove into the arc, ${size}, in the middle of the edge.`]),
      'Butts between the flange’s ends, top flush with the rail face, against the outside of the pan’s end wall; the wall is then trimmed to the arc.',
    ],
  });
};
