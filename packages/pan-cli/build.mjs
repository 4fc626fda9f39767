// Bundles the command line into dist/pan.js. --if-stale builds only when a source is newer.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const core = join(here, '../pan-core');
const out = join(here, 'dist/pan.js');

const newest = (dir) =>
  Math.max(
    0,
    ...readdirSync(dir, { withFileTypes: true }).map((e) =>
      e.isDirectory() ? newest(join(dir, e.name)) : statSync(join(dir, e.name)).mtimeMs,
    ),
  );

const sources = [join(here, 'src'), join(core, 'src')];
const stale =
  !existsSync(out) ||
  Math.max(...sources.map(newest), statSync(fileURLToPath(import.meta.url)).mtimeMs) > statSync(out).mtimeMs;

if (!process.argv.includes('--if-stale') || stale) {
  const { build } = await import('esbuild');
  await build({
    entryPoints: [join(here, 'src/main.ts')],
    outfile: undefined,
    outdir: join(here, 'dist'),
    entryNames: 'pan',
    chunkNames: 'part-[name]-[hash]',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    minify: true,
    legalComments: 'none',
    alias: { 'pan-core': join(core, 'src/index.ts') },
    banner: {
      js: "#!/usr/bin/env node\nimport { createRequire as panRequire } from 'node:module'; const require = panRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
}
