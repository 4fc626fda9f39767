import { add2, arcSegment, lineSegment, type Path, scale2 } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { LouvreCut, PlateOpening, SlotCut } from '../pan/index.js';
import type { Mark } from './part.js';

type Cut = NonNullable<PlateOpening['cut']>;

/** The closed cut of a slot or louvre, in the lid’s own x and y. */
export const lidCut = (cut: Cut): Path => (cut.shape === 'slot' ? slotCut(cut) : louvreCut(cut));

/** Two straight sides and two half circles: no corner for a crack to start at. */
const slotCut = ({ at, long, size: [length, width] }: SlotCut): Path => {
  const along: Vec2 = long === 'u' ? [1, 0] : [0, 1];
  const across: Vec2 = [-along[1], along[0]];
  const half = (length - width) / 2;
  const point = (s: number, t: number): Vec2 => add2(at, add2(scale2(along, s), scale2(across, t)));
  const r = width / 2;
  return [
    lineSegment(point(-half, -r), point(half, -r)),
    arcSegment(point(half, 0), point(half, -r), point(half, r), Math.PI),
    lineSegment(point(half, r), point(-half, r)),
    arcSegment(point(-half, 0), point(-half, r), point(-half, -r), Math.PI),
  ];
};

/** Three sides of the tongue as one slit with round ends; the fourth side is the hinge. */
const louvreCut = (cut: LouvreCut): Path => {
  const { slit, opens, size } = cut;
  const [half, width] = [size[0] / 2, size[1]];
  const point = louvrePoint(cut);
  const [inner, r] = [half - slit, slit / 2];
  const outer = [point(-half, 0), point(-half, width), point(half, width), point(half, 0)] as const;
  const tongue = [
    point(inner, 0),
    point(inner, width - slit),
    point(-inner, width - slit),
    point(-inner, 0),
  ] as const;
  return [
    lineSegment(outer[0], outer[1]),
    lineSegment(outer[1], outer[2]),
    lineSegment(outer[2], outer[3]),
    arcSegment(point(half - r, 0), outer[3], tongue[0], -opens * Math.PI),
    lineSegment(tongue[0], tongue[1]),
    lineSegment(tongue[1], tongue[2]),
    lineSegment(tongue[2], tongue[3]),
    arcSegment(point(r - half, 0), tongue[3], outer[0], -opens * Math.PI),
  ];
};

/** From along the hinge and out from it to the plate’s own x and y. */
const louvrePoint =
  ({ at, opens, size }: LouvreCut) =>
  (along: number, out: number): Vec2 => [at[0] + along, at[1] + opens * (out - size[1] / 2)];

/** Where tongues are bent by hand; the words stand beside the first. */
export const hingeMarks = (cuts: readonly Cut[]): readonly Mark[] =>
  cuts
    .filter((cut): cut is LouvreCut => cut.shape === 'louvre')
    .map((cut, i): Mark => {
      const point = louvrePoint(cut);
      const half = cut.size[0] / 2 - cut.slit;
      const deg = ((cut.bend * 180) / Math.PI).toFixed(0);
      return {
        path: [lineSegment(point(-half, 0), point(half, 0))],
        what: i === 0 ? `louvres: bend ${deg} deg down by hand` : '',
      };
    });
