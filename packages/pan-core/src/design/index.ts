export type * from './design.js';
export { findMaterial, type Material, type Metal, materials, smallestBendRadius } from './material.js';
export { missingUnits, readDesign } from './read-design.js';
