export * from './errors/index.js';
