import type { MeetMeasure } from '../clearance/index.js';
import type { ReadDesign } from '../design/index.js';
import { createOilSystem } from '../oil/index.js';
import { buildPan } from '../pan/index.js';
import { dipstickChecks } from './dipstick-checks.js';
import { fitChecks } from './fit-checks.js';
import { mouthCases } from './mouth-case.js';
import { mouthChecks } from './mouth-checks.js';
import { oilChecks, runningFills } from './oil-checks.js';
import { railChecks } from './rail-checks.js';
import type { Check } from './report.js';
import { sheetChecks } from './sheet-checks.js';
import { supplyChecks } from './supply-checks.js';

/**
 * The same checks as a full report, without advice and without those of the crank's dip, which only warn: what
 * a search over many designs asks of each. In groups from the cheapest to the dearest, each worked out when it
 * is asked for, so that a design can be given up before the dear ones.
 *
 * @param measure what is told of obstacles that are met: a search needs no depth, which costs the most of all
 * @throws PanError with a `shape-` or `oil-` code where the pan cannot exist at all
 */
export function* constraintChecks(
  { design, assumed, rail }: ReadDesign,
  measure: MeetMeasure = 'depth',
): Generator<readonly Check[], void, void> {
  const model = buildPan(design);
  const system = createOilSystem(model);
  yield [
    ...railChecks(rail),
    ...oilChecks(design, system),
    ...dipstickChecks(design, system),
    ...supplyChecks(design, system),
  ];
  yield sheetChecks(design, model);
  const cases = design.manoeuvres.map((one) => mouthCases(system, one, runningFills(design, assumed, one)));
  yield mouthChecks(design, system, cases, { advise: false });
  yield fitChecks(design, model, measure);
}
