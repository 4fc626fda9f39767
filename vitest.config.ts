import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: /^pan-core$/, replacement: here('packages/pan-core/src/index.ts') },
      { find: /^pan-core\/(.*)$/, replacement: here('packages/pan-core/src/$1') },
      { find: /^pan-cli\/(.*)$/, replacement: here('packages/pan-cli/src/$1') },
    ],
  },
  test: { include: ['tests/**/*.test.ts'], testTimeout: 120_000, hookTimeout: 120_000, maxWorkers: 2 },
});
