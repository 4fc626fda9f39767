import { movementWords } from '../clearance/index.js';
import type { Manoeuvre, ReadDesign } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { createOilSystem, inventoryOf, oilProperties, restAnswer } from '../oil/index.js';
import { buildPan } from '../pan/index.js';
import { SAYINGS } from '../weld/index.js';
import { bungLevelChecks } from './bung-level-checks.js';
import { crankDipChecks } from './crank-dip-checks.js';
import { crankDipTable } from './crank-dip-table.js';
import { dipstickChecks } from './dipstick-checks.js';
import { fitChecks } from './fit-checks.js';
import { groundsBy } from './grounds.js';
import { lidChecks } from './lid-checks.js';
import { measureAgain } from './measure-again.js';
import { mouthCases } from './mouth-case.js';
import { mouthChecks } from './mouth-checks.js';
import { oilChecks, runningFills } from './oil-checks.js';
import { railChecks } from './rail-checks.js';
import type { Check, CheckReport } from './report.js';
import { sheetChecks } from './sheet-checks.js';
import { supplyChecks } from './supply-checks.js';
import { supplyReport } from './supply-report.js';
import { swingChecks } from './swing-checks.js';
import { RANK, tally } from './tally.js';
import { tubeThroughChecks } from './tube-through.js';
import { unknownChecks } from './unknown-checks.js';

/**
 * Every question about a design, answered.
 *
 * @throws PanError with a `shape-` or `oil-` code where the pan cannot exist at all
 */
export const checkDesign = (read: ReadDesign): CheckReport => {
  const { design, assumed, unknown } = read;
  const model = buildPan(design);
  const system = createOilSystem(model);
  const oil = inventoryOf(design.oil);
  const level = (volume: number) =>
    restAnswer(system, volume).pools.find((p) => p.hasPickup)?.surface ?? null;
  const fillsOf = (manoeuvre: Manoeuvre): readonly number[] => runningFills(design, assumed, manoeuvre);
  const cases = design.manoeuvres.map((manoeuvre) => mouthCases(system, manoeuvre, fillsOf(manoeuvre)));
  const checks: readonly Check[] = [
    ...unknownChecks(unknown),
    ...railChecks(read.rail),
    ...oilChecks(design, system),
    ...lidChecks(design, system),
    ...dipstickChecks(design, system),
    ...bungLevelChecks(design, system),
    ...mouthChecks(design, system, cases),
    ...tubeThroughChecks(model),
    ...swingChecks(design, system, fillsOf),
    ...supplyChecks(design, system),
    ...crankDipChecks(design, system, cases),
    ...fitChecks(design, model),
    ...sheetChecks(design, model),
  ];
  const allAssumed = [...assumed, ...oilProperties(design.oil).assumed];
  const order = ranked(checks);
  const below = model.cells.reduce(
    (sum, cell, i) =>
      cell.zone === 'crankcase' ? sum : sum + (model.volumes[i] as number) * (model.shares[i] as number),
    0,
  );
  const { counts, verdict } = tally(checks);
  return freeze({
    title: design.title,
    verdict,
    counts,
    first: order[0] ?? null,
    next: order.find((c) => subject(c) !== subject(order[0] ?? c)) ?? null,
    capacity: {
      to_rail_L: below / 1e6,
      sharp_L: (model.sharp.shallow + model.sharp.sump) / 1e6,
      shallow_L: model.sharp.shallow / 1e6,
      sump_L: model.sharp.sump / 1e6,
      never_returns_L: restAnswer(system, 0).rest.neverReturns / 1e6,
    },
    levels: { stopped_mm: level(oil.stoppedInPan), running_mm: level(oil.runningInPan) },
    oil: {
      poured_L: oil.poured / 1e6,
      stopped_in_pan_L: oil.stoppedInPan / 1e6,
      running_in_pan_L: oil.runningInPan / 1e6,
    },
    supply: supplyReport(design, system),
    engine_moves: movementWords(design),
    crank_dip: crankDipTable(system, cases),
    checks,
    rests_on: groundsBy([...AMOUNTS, ...checks.map(({ id }) => id)], allAssumed),
    assumed: allAssumed,
    unknown,
    measureAgain: measureAgain(design, checks),
    sayings: [`${SAYINGS.geometry}.`],
  });
};

/** Litres and levels said before any check. */
const AMOUNTS = [
  'capacity.to_rail_L',
  'capacity.never_returns_L',
  'levels.stopped_mm',
  'levels.running_mm',
  'oil.stopped_in_pan_L',
  'oil.running_in_pan_L',
];

/** What binds, worst first; what passes binds nothing. */
const ranked = (checks: readonly Check[]): readonly Check[] =>
  checks
    .filter((c) => c.status !== 'pass')
    .sort((a, b) => RANK[a.status] - RANK[b.status] || a.margin - b.margin);

/** Held, settled and draw of one manoeuvre are one subject: the second line should tell something else. */
const subject = (check: Check): string =>
  check.id.replace(/^(mouth_held|mouth_settled|draw|swing)_/, 'mouth_');
