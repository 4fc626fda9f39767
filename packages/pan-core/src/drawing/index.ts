export { csv } from './csv.js';
export { materialCautions } from './cut-plan.js';
export { type CutFile, cutSet, type PrintRule } from './cutset.js';
export { type Chains, chainPieces, type DrawnFile } from './dxf/cut-line.js';
export { type DrawingRules, drawingRules } from './dxf/drawing-rules.js';
export { LAYERS } from './dxf/dxf-file.js';
export { barePartDxf, CHECK_SQUARE, partDxf, type SheetWords } from './dxf/dxf-part.js';
export { type ShopQuestion, type ShopRule, type ShopRuleId, shopRules } from './dxf/shop-rule.js';
export { costOf, makeOrBuy } from './list/cost.js';
export { oneLine, wrapLine } from './one-line.js';
export {
  type Fill,
  LETTER_WIDTH,
  PAPERS,
  type Page,
  type PageItem,
  type PagePrinter,
  type PageSet,
  type Paper,
  type Pen,
  type Stroke,
  type Words,
} from './page/page.js';
export { safeName, safeNames } from './safe-name.js';
export { partsInPlace } from './solid/in-place.js';
export { type Mesh, meshVolume } from './solid/mesh.js';
export { type Axis, cleanPlace, cutMesh, type PinHole } from './solid/mesh-cut.js';
export { type MockUpPiece, mockUpPieces, PIN } from './solid/mock-up-piece.js';
export { type ObstaclePicture, obstaclePictures, roadPlane } from './solid/obstacle-mesh.js';
export { hollowSolid, insideSolid, outsideSolid } from './solid/pan-solid.js';
export { plateSolid } from './solid/plate-solid.js';
export { readStl, writeStl } from './solid/stl-file.js';
export { type WorksheetOptions, worksheet } from './worksheet/worksheet.js';
export {
  notMeasured,
  type WorksheetPart,
  type WorksheetRow,
  worksheetParts,
} from './worksheet/worksheet-key.js';
