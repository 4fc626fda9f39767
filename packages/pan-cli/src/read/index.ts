export { type DesignFile, readDesignFile, readDesignText } from './read-design-file.js';
