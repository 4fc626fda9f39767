import type { Design, Plane } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Body } from './body.js';
import { bindingOf } from './chassis.js';
import { chassisAxes } from './chassis-axes.js';
import { type Clearance, unknownClearance } from './clearance.js';
import { motionOf, movesOf } from './engine-motion.js';
import { planeGap } from './plane-gap.js';
import practice from './practice.json' with { type: 'json' };
import { gapWords, restWords, worstWords } from './words.js';

/** The pan's lowest point over the road, the car standing level at the height it was measured; plug included. */
export const groundClearance = (design: Design, body: Body): Clearance => {
  const { ground } = design.chassis;
  const axes = chassisAxes(design);
  const unknown = (because: string): Clearance =>
    unknownClearance({
      name: 'ground',
      kind: 'ground',
      allowed: practice.ground,
      between: ['pan', 'ground'],
      because,
    });
  if (ground === null) return unknown('The height of the road under the rail is not given (chassis.ground).');
  if (!axes.known) return unknown(axes.because);
  const road: Plane = { kind: 'plane', at: [0, 0, ground], normal: [0, 0, 1] };
  const nominal = planeGap(body, road, motionOf(axes.toChassis));
  const moving = movesOf(design, axes.toChassis);
  const worst = moving === null ? null : planeGap(body, road, moving);
  return freeze({
    name: 'ground',
    kind: 'ground',
    distance: nominal.distance,
    worst: worst === null ? null : worst.distance,
    allowed: practice.ground,
    plusMinus: 0,
    between: [nominal.feature, 'ground'],
    worstBetween: [bindingOf(nominal, worst).feature, 'ground'],
    at: nominal.at,
    worstAt: bindingOf(nominal, worst).at,
    overhead: null,
    because: `The ${nominal.feature} and the road are ${gapWords(nominal.distance)} at rest${
      worst === null ? restWords : worstWords(worst, nominal, 0)
    }.`,
  });
};
