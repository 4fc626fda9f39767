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

/**
 * How a body stands to every obstacle of the chassis, as built and at its worst.
 *
 * @param tell Share of the work done, 0–1.
 */
export const chassisClearances = (
  design: Design,
  obstacles: readonly FormedObstacle[],
  body: Body,
  kind: ClearanceKind,
  who: string,
  tell: (share: number) => void,
): readonly Clearance[] =>
  obstacles.map((one, i) => {
    tell(i / obstacles.length);
    return obstacleClearance(design, one, body, kind, who);
  });

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
  const lacking = axes.known ? unreadScan(obstacle) : axes.because;
  if (!axes.known || lacking !== null) {
    return unknownClearance({
      name,
      kind,
      allowed: clear,
      plusMinus,
      between: [who, obstacle.name],
      because: lacking ?? '',
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
    worstPart: bindingOf(nominal, worst).part ?? null,
    at: nominal.at,
    worstAt: bindingOf(nominal, worst).at,
    overhead: null,
    because: `The ${nominal.feature} and the ${obstacle.name} are ${gapWords(nominal.distance)} at rest${
      worst === null ? restWords : worstWords(worst, nominal, plusMinus)
    }.${scanWords(obstacle, nominal)}`,
  });
};

const unreadScan = ({ shape }: Obstacle): string | null =>
  shape.kind === 'scan' && shape.soup === null ? `The scan ${shape.file} has not been read.` : null;

/** Where to put a finger on the scan, and how well it was placed. */
const scanWords = ({ shape }: Obstacle, { onObstacle }: Approach): string => {
  if (shape.kind !== 'scan') return '';
  const { unit, residuals } = shape;
  const digits = unit.name === 'mm' ? 1 : unit.name === 'in' ? 2 : 4;
  const at = (onObstacle ?? []).map((v) => v.toFixed(digits)).join(', ');
  return [
    ...(at === '' ? [] : [` On the scan, in its own axes: ${at} ${unit.name}.`]),
    ...(residuals === null
      ? []
      : [` Placed by ${residuals.length} points to within ${Math.max(...residuals).toFixed(1)} mm.`]),
  ].join('');
};

/** The approach that is nearest at the worst. */
export const bindingOf = (nominal: Approach, worst: Approach | null): Approach =>
  worst === null || worst.distance >= nominal.distance ? nominal : worst;
