export type * from './report.js';
