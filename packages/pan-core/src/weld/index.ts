export { joinPoints } from './join-points.js';
export { panSkin, type Skin, type SkinPiece } from './skin.js';
