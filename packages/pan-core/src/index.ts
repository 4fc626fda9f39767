export * from './clearance/index.js';
export * from './check/index.js';
export * from './design/index.js';
export * from './errors/index.js';
export * from './oil/index.js';
export * from './pan/index.js';
export * from './sheet/index.js';
export * from './units/index.js';
