import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Those that watch the engine itself, which earlier files of the same process would have warmed up differently. */
const APART = ['tests/exact/level-memory.test.ts'];

export default defineConfig({
  resolve: {
    alias: [
      { find: /^pan-core$/, replacement: here('packages/pan-core/src/index.ts') },
      { find: /^pan-core\/(.*)$/, replacement: here('packages/pan-core/src/$1') },
      { find: /^pan-cli\/(.*)$/, replacement: here('packages/pan-cli/src/$1') },
    ],
  },
  test: {
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        // No file keeps state in a module: the sources are loaded once a process instead of once a file.
        test: { name: 'together', include: ['tests/**/*.test.ts'], exclude: APART, isolate: false },
      },
      { extends: true, test: { name: 'apart', include: APART } },
    ],
  },
});
