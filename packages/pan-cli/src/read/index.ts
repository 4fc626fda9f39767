export { placedError } from './placed-error.js';
export { type DesignFile, designParts, readDesignFile, readDesignText } from './read-design-file.js';
