import type { Design, Obstacle } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Body } from './body.js';
import { chassisAxes } from './chassis-axes.js';
import { type Clearance, type ClearanceKind, unknownClearance } from './clearance.js';
import { motionOf, movesOf } from './engine-motion.js';
import { type Approach, formOf, type ObstacleForm } from './obstacle-form.js';
import { gapWords, restWords, worstWords } from './words.js';

/** An obstacle of the design with what distances to it need, made once for everything that is measured to it. */
export interface FormedObstacle {
  readonly obstacle: Obstacle;
  readonly form: ObstacleForm;
}

export const formedObstacles = (design: Design): readonly FormedObstacle[] =>
  design.chassis.obstacles.map((obstacle) => ({ obstacle, form: formOf(obstacle.shape) }));

/** How a body stands to every obstacle of the chassis, as built and at its worst. */
export const chassisClearances = (
  design: Design,
  obstacles: readonly FormedObstacle[],
  body: Body,
  kind: ClearanceKind,
  who: string,
): readonly Clearance[] => obstacles.map((one) => obstacleClearance(design, one, body, kind, who));

const obstacleClearance = (
  design: Design,
  { obstacle, form }: FormedObstacle,
  body: Body,
  kind: ClearanceKind,
  who: string,
): Clearance => {
  const name = kind === 'carried' ? `${who} to ${obstacle.name}` : obstacle.name;
  const { plusMinus, clear } = obstacle;
  const axes = chassisAxes(design);
  if (!axes.known) {
    return unknownClearance({
      name,
      kind,
      allowed: clear,
      plusMinus,
      between: [who, obstacle.name],
      because: axes.because,
    });
  }
  const nominal = form.approach(body, motionOf(axes.toChassis));
  const moving = movesOf(design, axes.toChassis);
  const worst = moving === null ? null : form.approach(body, moving);
  return freeze({
    name,
    kind,
    distance: nominal.distance,
    worst: worst === null ? null : Math.min(worst.distance, nominal.distance) - plusMinus,
    allowed: clear,
    plusMinus,
    between: [nominal.feature, obstacle.name],
    worstBetween: [bindingOf(nominal, worst).feature, obstacle.name],
    at: nominal.at,
    worstAt: bindingOf(nominal, worst).at,
    overhead: null,
    because: `The ${nominal.feature} and the ${obstacle.name} are ${gapWords(nominal.distance)} at rest${
      worst === null ? restWords : worstWords(worst, nominal, plusMinus)
    }.`,
  });
};

/** The approach that is nearest at the worst. */
export const bindingOf = (nominal: Approach, worst: Approach | null): Approach =>
  worst === null || worst.distance >= nominal.distance ? nominal : worst;
