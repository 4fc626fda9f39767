export { type ErrorCode, errorCodes } from './error-code.js';
export { PanError, type Problem } from './problem.js';
