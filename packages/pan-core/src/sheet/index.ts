export { BAFFLE_GAP } from './baffle-plate.js';
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
export { bendsOf, type ListedBend } from './bend-list.js';
export { type BendRule, bendRule, type Hardness, handbookConstant, tableK } from './bend-rule.js';
export { buttTrim } from './butt-trim.js';
export { cutParts } from './cut-parts.js';
export type { SheetFinding } from './finding.js';
export { clearanceHole, FLANGE_GAP, flangeOpening, flangeOutline } from './flange.js';
export type { Fold, Mark, Part, RoundHole } from './part.js';
export { notchPartNames, type WingPiece, wingPartName, wingPieceOf } from './part-name.js';
export { sheetFindings } from './sheet-finding.js';
export { type ShopFinding, SMALLEST_GAP, SMALLEST_HOLE, shopFindings } from './shop-finding.js';
