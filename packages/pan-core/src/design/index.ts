export type * from './design.js';
export { findMaterial, type Material, type Metal, materials } from './material.js';
