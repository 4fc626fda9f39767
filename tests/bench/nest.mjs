// Sheet used and time taken by 50 random sets of parts, beside layouts of their boxes.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const SETS = 50;
const LEAST_SAVED = 0.15;
const MOST_SECONDS = 10;
const SHEET = { length: 2500, width: 1250, edge: 10, gap: 5 };

const here = dirname(fileURLToPath(import.meta.url));
const core = join(here, '../../packages/pan-core');
// Beside the library that lays out, so that it is found from there.
const folder = mkdtempSync(join(core, 'node_modules/.pan-bench-'));
const load = async () => {
  const { outputFiles } = await build({
    stdin: {
      contents:
        "export { nestParts } from 'pan-core/drawing/nest/nest.js'; export { boxShare, partSet } from './nest-sets.ts'; export { shelfArea } from './shelf-nest.ts';",
      resolveDir: join(here, '..'),
      loader: 'ts',
    },
    alias: { 'pan-core': join(core, 'src') },
    external: ['clipper2-ts'],
    bundle: true,
    format: 'esm',
    platform: 'node',
    write: false,
    logLevel: 'error',
  });
  const file = join(folder, 'nest.mjs');
  writeFileSync(file, outputFiles[0].contents);
  return import(pathToFileURL(file).href);
};

try {
  const { nestParts, boxShare, partSet, shelfArea } = await load();
  let [saved, counted, slowest, worse] = [0, 0, 0, 0];
  for (let seed = 1; seed <= SETS; seed++) {
    const parts = partSet(seed);
    const start = performance.now();
    const { usedArea, boxArea } = await nestParts(parts, SHEET);
    slowest = Math.max(slowest, (performance.now() - start) / 1000);
    if (usedArea > Math.min(boxArea, shelfArea(parts, SHEET) ?? boxArea)) worse++;
    if (boxShare(parts) > 0.8) continue;
    saved += 1 - usedArea / boxArea;
    counted++;
  }
  const share = saved / counted;
  const line = (what, ok, text) => console.log(`  ${ok ? 'ok  ' : 'FAIL'} ${what}: ${text}`);
  line('worse than boxes', worse === 0, `${worse} of ${SETS} sets`);
  line(
    'less sheet than boxes laid out the same way',
    share >= LEAST_SAVED,
    `${(100 * share).toFixed(1)} % on average over ${counted} sets at most 80 % rectangular, wants ${100 * LEAST_SAVED} %`,
  );
  line('slowest set', slowest < MOST_SECONDS, `${slowest.toFixed(1)} s, wants under ${MOST_SECONDS} s`);
  if (worse > 0 || share < LEAST_SAVED || slowest >= MOST_SECONDS) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}
