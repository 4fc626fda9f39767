export * from './errors/index.js';
export * from './check/index.js';
export * from './design/index.js';
export * from './units/index.js';
