export { type ErrorCode, PanError, type Problem } from './problem.js';
