import type { Design, Plane, Suspension } from '../design/index.js';
import { freeze, type Vec3 } from '../numeric/index.js';
import type { Body } from './body.js';
import { bindingOf } from './chassis.js';
import { chassisAxes } from './chassis-axes.js';
import { type Clearance, unknownClearance } from './clearance.js';
import { motionOf, movesOf } from './engine-motion.js';
import { planeGap } from './plane-gap.js';
import practice from './practice.json' with { type: 'json' };
import { gapWords, restWords, worstWords } from './words.js';

/** The road in one state of the car, as planes of which the nearest counts. */
export interface Road {
  readonly name: string;
  /** Wanted height over it, mm. */
  readonly usual: number;
  readonly planes: readonly Plane[];
}

/**
 * The road under the car standing level at the height it was measured, and, where its springs are given, at the
 * worst that both axles can sink and pitch. No planes: its height is not given.
 */
export const roadsOf = ({ chassis: { ground, suspension } }: Design): readonly Road[] => [
  { name: 'ground', usual: practice.ground, planes: ground === null ? [] : [levelRoad(ground)] },
  ...(ground === null || suspension === null
    ? []
    : [
        {
          name: 'ground at full bump',
          usual: practice.groundAtBump,
          planes: sunkRoads(suspension, ground),
        },
      ]),
];

/** The pan over the road, plug included. */
export const groundClearances = (design: Design, body: Body): readonly Clearance[] =>
  roadsOf(design).map((road) => roadRow(design, body, road));

const levelRoad = (ground: number): Plane => ({ kind: 'plane', at: [0, 0, ground], normal: [0, 0, 1] });

/**
 * The road as the car sees it at each corner of what its axles can do. Between the corners a point's height over
 * the road's line lies between theirs, so that the least is at one of them (under the
 * road, where the pan has failed anyway, to within the pitch's cosine).
 */
const sunkRoads = (s: Suspension, ground: number): readonly Plane[] =>
  [s.bumpFront, -s.droopFront].flatMap((front) =>
    [s.bumpRear, -s.droopRear].map((rear): Plane => {
      const slope = (front - rear) / (s.frontAxle - s.rearAxle);
      const size = Math.hypot(1, slope);
      const normal: Vec3 = [-slope / size, 0, 1 / size];
      return { kind: 'plane', at: [s.rearAxle, 0, ground + rear], normal };
    }),
  );

const roadRow = (design: Design, body: Body, { name, usual: allowed, planes: roads }: Road): Clearance => {
  const axes = chassisAxes(design);
  const unknown = (because: string): Clearance =>
    unknownClearance({ name, kind: 'ground', allowed, between: ['pan', 'ground'], because });
  if (roads.length === 0)
    return unknown('The height of the road under the rail is not given (chassis.ground).');
  if (!axes.known) return unknown(axes.because);
  const least = (motion: ReturnType<typeof motionOf>) =>
    roads.map((road) => planeGap(body, road, motion)).reduce((a, b) => (b.distance < a.distance ? b : a));
  const nominal = least(motionOf(axes.toChassis));
  const moving = movesOf(design, axes.toChassis);
  const worst = moving === null ? null : least(moving);
  const { groundPlusMinus: plusMinus } = design.chassis;
  const how = roads.length === 1 ? 'at rest' : 'with the car as low and as far pitched as its springs let it';
  return freeze({
    name,
    kind: 'ground',
    distance: nominal.distance,
    worst: worst === null ? null : worst.distance - plusMinus,
    allowed,
    plusMinus,
    between: [nominal.feature, 'ground'],
    worstBetween: [bindingOf(nominal, worst).feature, 'ground'],
    worstPart: null,
    at: nominal.at,
    worstAt: bindingOf(nominal, worst).at,
    overhead: null,
    because: `The ${nominal.feature} and the road are ${gapWords(nominal.distance)} ${how}${
      worst === null ? restWords : worstWords(worst, nominal, plusMinus)
    }.`,
  });
};
