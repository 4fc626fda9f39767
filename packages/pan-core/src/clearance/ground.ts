import type { Design, Plane } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Body } from './body.js';
import { bindingOf, rockOf } from './chassis.js';
import { chassisAxes } from './chassis-axes.js';
import { type Clearance, unknownClearance } from './clearance.js';
import { NO_ROCK } from './least-gap.js';
import { planeGap } from './plane-gap.js';
import practice from './practice.json' with { type: 'json' };
import { gapWords, movementWords } from './words.js';

/** The pan's lowest point over the road, the car standing level at the height it was measured; plug included. */
export const groundClearance = (design: Design, body: Body): Clearance => {
  const { ground, moves } = design.chassis;
  const axes = chassisAxes(design);
  const between = ['pan', 'ground'] as const;
  if (ground === null) {
    return unknownClearance(
      'ground',
      'ground',
      practice.ground,
      between,
      'The height of the road under the rail is not given (chassis.ground).',
    );
  }
  if (!axes.known) return unknownClearance('ground', 'ground', practice.ground, between, axes.because);
  const road: Plane = { kind: 'plane', at: [0, 0, ground], normal: [0, 0, 1] };
  const nominal = planeGap(body, road, axes.toChassis, NO_ROCK, null);
  const rock = rockOf(design);
  const worst = rock === null ? null : planeGap(body, road, axes.toChassis, rock, moves);
  return freeze({
    name: 'ground',
    kind: 'ground',
    distance: nominal.distance,
    worst: worst === null ? null : worst.distance,
    allowed: practice.ground,
    between: [nominal.feature, 'ground'],
    worstBetween: [bindingOf(nominal, worst), 'ground'],
    at: nominal.at,
    because:
      `The ${nominal.feature} and the road are ${gapWords(nominal.distance)} at rest` +
      (worst === null
        ? '; the engine rocks and the crank’s height (engine.crank) is not given.'
        : `${movementWords(moves, worst, nominal)}.`),
  });
};
