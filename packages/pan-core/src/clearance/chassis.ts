import type { Design, Obstacle } from '../design/index.js';
import { freeze, type Vec3 } from '../numeric/index.js';
import { type Body, faceNameAt } from './body.js';
import { type ChassisAxes, chassisAxes } from './chassis-axes.js';
import { type Clearance, type ClearanceKind, unknownClearance } from './clearance.js';
import { deepestTurn } from './deepest-turn.js';
import { leastGap, NO_ROCK, type Rock } from './least-gap.js';
import { hullOfShape, inPanAxes, sweptByMoves } from './obstacle-hull.js';
import { planeGap } from './plane-gap.js';
import { surfaceName } from './surface-name.js';
import { gapWords, movementWords, round1 } from './words.js';

/** One place of closest approach, signed. */
export interface Approach {
  readonly distance: number;
  readonly at: Vec3;
  readonly feature: string;
  readonly angle: number;
}

/** How a body stands to every obstacle of the chassis, as built and at its worst. */
export const chassisClearances = (
  design: Design,
  body: Body,
  kind: ClearanceKind,
  who: string,
): readonly Clearance[] => {
  const axes = chassisAxes(design);
  return design.chassis.obstacles.map((obstacle) =>
    obstacleClearance(design, axes, body, obstacle, kind, who),
  );
};

const obstacleClearance = (
  design: Design,
  axes: ChassisAxes,
  body: Body,
  obstacle: Obstacle,
  kind: ClearanceKind,
  who: string,
): Clearance => {
  const name = kind === 'carried' ? `${who} to ${obstacle.name}` : obstacle.name;
  if (!axes.known) return unknownClearance(name, kind, obstacle.clear, [who, obstacle.name], axes.because);
  const rock = rockOf(design);
  const nominal = approach(design, axes, body, obstacle, NO_ROCK, false);
  const worst = rock === null ? null : approach(design, axes, body, obstacle, rock, true);
  const { moves } = design.chassis;
  return freeze({
    name,
    kind,
    distance: nominal.distance,
    worst: worst === null ? null : Math.min(worst.distance, nominal.distance) - obstacle.plusMinus,
    allowed: obstacle.clear,
    between: [nominal.feature, obstacle.name],
    worstBetween: [bindingOf(nominal, worst), obstacle.name],
    at: nominal.at,
    because:
      `The ${nominal.feature} and the ${obstacle.name} are ${gapWords(nominal.distance)} at rest` +
      (worst === null
        ? '; the engine rocks and the crank’s height (engine.crank) is not given.'
        : `${movementWords(moves, worst, nominal)}${measurementWords(obstacle.plusMinus)}.`),
  });
};

/** The feature that is nearest at the worst. */
export const bindingOf = (nominal: Approach, worst: Approach | null): string =>
  worst === null || worst.distance >= nominal.distance ? nominal.feature : worst.feature;

const measurementWords = (plusMinus: number): string =>
  plusMinus > 0 ? `, less ${round1(plusMinus)} mm for the measurement` : '';

/** null: the engine rocks about a crank that is not given. */
export const rockOf = (design: Design): Rock | null => {
  const { rock } = design.chassis.moves;
  if (rock === 0) return NO_ROCK;
  const { crank } = design.engine;
  return crank === null ? null : { height: crank.centreAboveRail, angle: rock };
};

const approach = (
  design: Design,
  axes: ChassisAxes & { readonly known: true },
  body: Body,
  obstacle: Obstacle,
  rock: Rock,
  moving: boolean,
): Approach => {
  const { shape } = obstacle;
  if (shape.kind === 'plane') {
    return planeGap(body, shape, axes.toChassis, rock, moving ? design.chassis.moves : null);
  }
  const still = hullOfShape(shape);
  const hull = inPanAxes(moving ? sweptByMoves(shape, still, design.chassis.moves) : still, axes.toChassis);
  const gap = leastGap(body, hull, rock);
  if (!gap.meets) {
    const feature = faceNameAt(body.solids[gap.solid]!, gap.onBody, gap.toward);
    return { distance: gap.distance, at: gap.onBody, feature, angle: gap.angle };
  }
  const deep = deepestTurn(body, hull, rock);
  const feature = surfaceName(body, deep) ?? body.solids[gap.solid]!.name;
  return { distance: -deep.depth, at: deep.at, feature, angle: deep.angle };
};
