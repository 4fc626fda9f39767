import {
  type Clearance,
  clearances,
  movementWords,
  type ShiftRange,
  throwClearances,
} from '../clearance/index.js';
import type { Assumption, ReadDesign, Unknown } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type OuterSolid, outerSolids, type PanModel, type Plate, platesOf } from '../pan/index.js';
import { SAYINGS } from '../weld/index.js';
import { clearanceCheck } from './fit-checks.js';
import { type DecidingMeasure, decidingMeasures } from './measure-first.js';
import { notChecked } from './not-checked.js';
import { mountsAssumed, type RemovalReport, removalReport } from './removal-report.js';
import type { Check, Status } from './report.js';
import { type RoomReport, roomReport } from './room-report.js';
import { RANK, tally } from './tally.js';

/** One clearance of `pan fit`; null is not known. Places are in pan axes. */
export interface FitRow {
  readonly name: string;
  readonly kind: Clearance['kind'];
  readonly status: Status;
  /** As designed, the engine at rest; negative is how deep they meet. */
  readonly distance_mm: number | null;
  /** Least while the engine moves, less the measurement's plus-or-minus. */
  readonly worst_mm: number | null;
  readonly plus_minus_mm: number;
  readonly allowed_mm: number;
  readonly between: readonly [string, string];
  readonly worst_between: readonly [string, string];
  /** The nearest face, edge or corner of a box-like obstacle at the worst, by the car’s directions; null: not told. */
  readonly worst_part: string | null;
  readonly at: readonly [number, number, number] | null;
  readonly worst_at: readonly [number, number, number] | null;
  readonly because: string;
  readonly try: string;
}

/** How near the rods of one throw come to what stands round them, mm. */
export interface ThrowRow {
  readonly throw: number;
  readonly x_mm: number;
  readonly near: readonly {
    readonly to: string;
    readonly distance_mm: number;
    readonly at: readonly [number, number, number];
  }[];
}

/** Everything `pan fit` says: each clearance at rest and at its worst, the room to move and the way out. */
export interface FitReport {
  readonly title: string;
  readonly verdict: Status;
  readonly counts: Readonly<Record<Status, number>>;
  /** What binds, worst first; null when nothing fails or is missing. */
  readonly first: FitRow | null;
  /** The tightest of what passes; null when nothing does. */
  readonly tightest: FitRow | null;
  readonly clearances: readonly FitRow[];
  /** What the rod of each throw comes near, the throws counted from the rear. */
  readonly throws: readonly ThrowRow[];
  readonly engine_moves: string;
  readonly guarantee: string;
  /** null where it cannot be known, or where there is nothing to meet. */
  readonly room: RoomReport | null;
  /** null where the chassis's axes are not known. */
  readonly removal: RemovalReport | null;
  /** Measurements to repeat, the one that decides most first. */
  readonly measure_first: readonly DecidingMeasure[];
  /** What nothing is said about because the file leaves it out. */
  readonly not_checked: readonly string[];
  readonly assumed: readonly Assumption[];
  readonly unknown: readonly Unknown[];
  readonly sayings: readonly string[];
}

/** The clearances of a design alone, judged, the worst first, and what they are worst over. */
export type FitRows = Pick<FitReport, 'clearances' | 'engine_moves' | 'guarantee'>;

/** How far to look for room to move, mm, and other tilts of the engine to look at, radians nose up. */
export interface FitQuestion {
  readonly range: ShiftRange;
  readonly tilts: readonly number[];
}

/** What stands behind every worst figure. */
const GUARANTEE =
  'Worst is a bound, not a sample: no place within the movement comes nearer. It is within 0.00001 mm of the true least gap, and within 0.1 mm of the true depth where parts meet while rocking (unless many parts meet, then farther on the safe side).';

/** Share of the work done once the clearances, and then the room to move, are known. */
const CLEARANCES = 0.1;
const ROOM = 0.5;

interface Judged {
  readonly clearance: Clearance;
  readonly check: Check;
}

const judgedOf = (
  design: ReadDesign['design'],
  solids: readonly OuterSolid[],
  plates: readonly Plate[],
  tell: (share: number) => void = () => {},
): readonly Judged[] =>
  clearances(design, solids, plates, 'depth', tell).map((clearance) => ({
    clearance,
    check: clearanceCheck(design, clearance),
  }));

const rowsOf = (judged: readonly Judged[]): readonly FitRow[] =>
  [...judged]
    .sort((a, b) => RANK[a.check.status] - RANK[b.check.status] || a.check.margin - b.check.margin)
    .map(({ clearance, check }) => rowOf(clearance, check));

/** Every clearance of a design, judged, the worst first, without room to move and the way out. */
export const fitRows = (design: ReadDesign['design'], model: PanModel): FitRows =>
  freeze({
    clearances: rowsOf(judgedOf(design, outerSolids(design, model.profile), platesOf(model))),
    engine_moves: movementWords(design),
    guarantee: GUARANTEE,
  });

/**
 * Every clearance of a design, judged, the worst first.
 *
 * @param tell Share of the work done, 0–1.
 */
export const fitReport = (
  { design, assumed, unknown }: ReadDesign,
  model: PanModel,
  { range, tilts }: FitQuestion,
  tell: (share: number) => void = () => {},
): FitReport => {
  const solids = outerSolids(design, model.profile);
  const plates = platesOf(model);
  const judged = judgedOf(design, solids, plates, (share) => tell(CLEARANCES * share));
  const rows = rowsOf(judged);
  const { counts, verdict } = tally(rows);
  const room = roomReport(design, solids, range, tilts, (share) =>
    tell(CLEARANCES + (ROOM - CLEARANCES) * share),
  );
  const removal = removalReport(design, model, solids, plates, (share) => tell(ROOM + (1 - ROOM) * share));
  return freeze({
    title: design.title,
    verdict,
    counts,
    first: rows.find((row) => row.status !== 'pass') ?? null,
    tightest: rows.find((row) => row.status === 'pass') ?? null,
    clearances: rows,
    throws: throwClearances(design, model.profile, plates).map(({ number, x, near }) => ({
      throw: number,
      x_mm: x,
      near: near.map(({ to, distance, at }) => ({ to, distance_mm: distance, at })),
    })),
    engine_moves: movementWords(design),
    guarantee: GUARANTEE,
    room,
    removal,
    measure_first: decidingMeasures(
      judged.map(({ clearance, check }) => ({ ...clearance, allowed: limitOf(check, clearance) })),
    ),
    not_checked: notChecked(design),
    assumed: [
      ...assumed.filter(({ path }) => ofFit(path)),
      ...(removal === null ? [] : mountsAssumed(design, removal)),
    ],
    unknown: unknown.filter(({ path }) => ofFit(path) || path.includes('tilt')),
    sayings: [SAYINGS.fit, SAYINGS.assembly, SAYINGS.cut],
  });
};

const limitOf = (check: Check, { allowed }: Clearance): number => check.limit ?? allowed;

const ofFit = (path: readonly (string | number)[]): boolean =>
  (path[0] === 'chassis' && path[1] !== 'body') ||
  (path[0] === 'engine' && (path[1] === 'crank' || path[1] === 'plus_minus'));

const rowOf = (c: Clearance, check: Check): FitRow => ({
  name: c.name,
  kind: c.kind,
  status: check.status,
  distance_mm: c.distance,
  worst_mm: c.worst,
  plus_minus_mm: c.plusMinus,
  allowed_mm: limitOf(check, c),
  between: c.between,
  worst_between: c.worstBetween,
  worst_part: c.worstPart,
  at: c.at,
  worst_at: c.worstAt,
  because: c.because,
  try: check.try,
});
