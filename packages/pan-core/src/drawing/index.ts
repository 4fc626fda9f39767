export { type CutFile, cutSet } from './cutset.js';
export { LAYERS } from './dxf-file.js';
export { barePartDxf, CHECK_SQUARE, partDxf, type SheetWords } from './dxf-part.js';
export { type Mesh, meshVolume } from './mesh.js';
export { oneLine, wrapLine } from './one-line.js';
export { insideSolid, outsideSolid } from './pan-solid.js';
export { plateSolid } from './plate-solid.js';
export { safeName, safeNames } from './safe-name.js';
export { readStl, writeStl } from './stl-file.js';
