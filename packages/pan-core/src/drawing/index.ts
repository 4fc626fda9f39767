export { LAYERS } from './dxf-file.js';
export { barePartDxf, CHECK_SQUARE, partDxf } from './dxf-part.js';
export { oneLine, wrapLine } from './one-line.js';
