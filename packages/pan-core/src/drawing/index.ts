export { costOf, makeOrBuy } from './cost.js';
export { csv } from './csv.js';
export { type Chains, chainPieces, type DrawnFile } from './cut-line.js';
export { materialCautions } from './cut-plan.js';
export { type CutFile, cutSet, type PrintRule } from './cutset.js';
export { type DrawingRules, drawingRules } from './drawing-rules.js';
export { LAYERS } from './dxf-file.js';
export { barePartDxf, CHECK_SQUARE, partDxf, type SheetWords } from './dxf-part.js';
export { partsInPlace } from './in-place.js';
export { type Mesh, meshVolume } from './mesh.js';
export { type Axis, cleanPlace, cutMesh, type PinHole } from './mesh-cut.js';
export { type MockUpPiece, mockUpPieces, PIN } from './mock-up-piece.js';
export { type ObstaclePicture, obstaclePictures, roadPlane } from './obstacle-mesh.js';
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
} from './page.js';
export { hollowSolid, insideSolid, outsideSolid } from './pan-solid.js';
export { plateSolid } from './plate-solid.js';
export { safeName, safeNames } from './safe-name.js';
export { type ShopQuestion, type ShopRule, type ShopRuleId, shopRules } from './shop-rule.js';
export { readStl, writeStl } from './stl-file.js';
export { type WorksheetOptions, worksheet } from './worksheet.js';
export { notMeasured, type WorksheetPart, type WorksheetRow, worksheetParts } from './worksheet-key.js';
