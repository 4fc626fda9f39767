export type { MouthCover } from './cover-log.js';
export { laminarShare, notchFlow, rehbock, SHARP_DISCHARGE } from './discharge.js';
export {
  type LoadLog,
  type LoadPath,
  type LoadStep,
  logPath,
  manoeuvrePath,
  stepsPath,
} from './load-path.js';
export { areaBelow, headIntegral, type OpeningShape } from './opening-head.js';
export type { PassageFlow } from './passage-flow.js';
export type { PlacedOil, ReturnPlace, SurgeOptions } from './settings.js';
export { type SurgeRun, surge } from './surge.js';
export {
  type NamedPath,
  namedManoeuvre,
  notModelled,
  type SurgeCase,
  type SurgeReport,
  surgeReport,
} from './surge-report.js';
export type { SurgeSeries } from './surge-series.js';
