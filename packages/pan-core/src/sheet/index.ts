export { airBendForce, airBendRadius, openingFor, shortestAirBendLeg } from './air-bend.js';
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
export { punchHalf } from './brake-finding.js';
export { buttTrim } from './butt-trim.js';
export { asksForTrees, cutParts } from './cut-parts.js';
export { type Facet, locate } from './cutter.js';
export { doorFindings, doorHeads } from './door-head.js';
export { type EdgePrep, edgePrep, type PreparedJoint } from './edge-prep.js';
export { endSealFrame, endSealName, endSealOutline } from './end-seal.js';
export type { SheetFinding } from './finding.js';
export { flangeParts } from './flange.js';
export { clearanceHole, DOWEL_ROOM, type FlangeHole, flangeHoles } from './flange-hole.js';
export { type FlangePiece, flangeJoints, flangePieces } from './flange-piece.js';
export { flangeRim } from './flange-scallop.js';
export { FLANGE_GAP, flangeOpening, flangeOutline } from './flange-shape.js';
export { halfNames } from './flange-split.js';
export { flangeLift, gasketNeed, gasketPitch } from './flange-stiffness.js';
export { blankOverlaps, type Overlap } from './flat-overlap.js';
export { type FoldOrder, foldOrder } from './fold-order.js';
export { allowedTurns } from './grain-turn.js';
export { type Leaf, leafFlat } from './leaf.js';
export type { LeafEdge } from './leaf-edge.js';
export { mountHoles, TAB_FOOT, type TabKind, tabKinds, tabPlaces } from './lid-tab.js';
export { nearestRun } from './make-up.js';
export type { Fold, Mark, Part, PartJoin, RoundHole } from './part.js';
export { notchPartNames, type WingPiece, wingPartName, wingPieceOf } from './part-name.js';
export type { Placement } from './placement.js';
export { sheetFindings } from './sheet-finding.js';
export { type ShopFinding, SMALLEST_GAP, SMALLEST_HOLE, shopFindings } from './shop-finding.js';
export { joinsOnce } from './split-join.js';
export { type SheetTrees, sheetTrees, treeNames, treeParts } from './tree-part.js';
export type { Blank, FlatFold } from './unfold.js';
