export type { Fold, Mark, Part, RoundHole } from './part.js';
