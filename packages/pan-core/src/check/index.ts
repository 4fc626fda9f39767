export { checkDesign } from './check-design.js';
export { constraintChecks } from './constraint-checks.js';
export { type DipstickReport, dipstickReport, type StickRow } from './dipstick-report.js';
export {
  type FitQuestion,
  type FitReport,
  type FitRow,
  type FitRows,
  fitReport,
  fitRows,
} from './fit-report.js';
export { type Formula, formulaOf } from './formula.js';
export { assumedFor, type FillKind, type Grounds, groundsBy, groundsOf } from './grounds.js';
export {
  type LevelReport,
  type LevelState,
  levelReport,
  levelReportOf,
  SLOSH_LIMITS,
} from './level-report.js';
export { type LimitChange, limitChanges } from './limit-change.js';
export {
  type LimitCase,
  type LimitDirection,
  type LimitsReport,
  limitsReport,
  towardOf,
} from './limits-report.js';
export type { DecidingMeasure } from './measure-first.js';
export { type MouthCase, mouthCase } from './mouth-case.js';
export type { RaiseReport, RemovalLeg, RemovalReport } from './removal-report.js';
export type * from './report.js';
export type { RoomReport, ShiftPlace, TiltRow } from './room-report.js';
export { marginOf } from './row.js';
export { type SupplyPull, type SupplyReport, type SupplyRow, supplyReport } from './supply-report.js';
