export { settableLimits, slug } from './check-id.js';
export type * from './design.js';
export { designJsonSchema } from './json-schema.js';
export { designKeyRows, type KeyRow } from './key-list.js';
export { type PresetName, presetManoeuvres, presetNames } from './manoeuvre-preset.js';
export { findMaterial, type Material, type Metal, materials, smallestBendRadius } from './material.js';
export { missingUnits, readDesign } from './read-design.js';
