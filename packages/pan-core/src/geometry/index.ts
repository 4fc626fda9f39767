export type { Arc, Line, Path, Segment } from './path.js';
