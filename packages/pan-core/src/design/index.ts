export type * from './design.js';
