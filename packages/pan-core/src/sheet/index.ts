export {
  allowanceByDin,
  allowanceByHandbook,
  allowanceByK,
  bendDeduction,
  dinCompensation,
  dinFactor,
  flatLength,
  kFromBendTest,
  outsideSetback,
} from './bend-allowance.js';
export { type BendRule, bendRule, type Hardness, tableK } from './bend-rule.js';
export { buttTrim } from './butt-trim.js';
export { cutParts } from './cut-parts.js';
export { clearanceHole, FLANGE_GAP, flangeOpening, flangeOutline } from './flange.js';
export type { Fold, Mark, Part, RoundHole } from './part.js';
