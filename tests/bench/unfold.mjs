// A thousand random pans folded along random edges: the worst of every measure, beside its bound.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const PANS = Number(process.env.PAN_COUNT ?? 1000);
const SEED = Number(process.env.PAN_SEED ?? 1);
const BOUNDS = {
  closing: 1e-6,
  runs: 1e-9,
  widths: 1e-9,
  area: 1e-12,
  beyondReported: 1e-9,
  mirror: 1e-6,
  overlap: 1e-6,
};

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pan-bench-'));
try {
  const { outputFiles } = await build({
    stdin: {
      contents: `
        export { treeErrors } from './tree-check.js';
        export { treeCase } from './tree-design.js';
        export { setImage } from './mirror-image.js';
        export { wholeCut } from './sheet-design.js';
        export { mirrored } from '../mirror-design.js';`,
      resolveDir: at('../properties'),
      loader: 'ts',
    },
    alias: { 'pan-core': at('../../packages/pan-core/src') },
    bundle: true,
    format: 'esm',
    platform: 'node',
    write: false,
    logLevel: 'error',
  });
  const file = join(folder, 'trees.mjs');
  writeFileSync(file, outputFiles[0].contents);
  const { treeCase, treeErrors, setImage, wholeCut, mirrored } = await import(pathToFileURL(file).href);
  const worst = Object.fromEntries(Object.keys(BOUNDS).map((key) => [key, 0]));
  let [pans, made, blanks, compared, handed] = [0, 0, 0, 0, 0];
  const whole = { sets: 0, worst: 0, handed: 0 };
  const start = performance.now();
  for (let seed = SEED; made < PANS; seed++) {
    const one = treeCase(seed);
    if (one === null) continue;
    pans++;
    if (one.refused !== null) continue;
    made++;
    blanks += one.trees.blanks.length;
    const errors = treeErrors(one);
    compared += errors.compared;
    handed += errors.handed;
    const plain = { ...one.design, engine: { ...one.design.engine, railHoles: [] } };
    plain.pan = { ...plain.pan, joints: { ...plain.pan.joints, fold: [], weld: [] } };
    const image = setImage(wholeCut(plain), wholeCut(mirrored(plain)));
    whole.sets++;
    whole.worst = Math.max(whole.worst, image.worst);
    whole.handed += image.handed;
    for (const key of Object.keys(BOUNDS)) worst[key] = Math.max(worst[key], errors[key]);
  }
  const seconds = (performance.now() - start) / 1000;
  console.log(
    `  ${made} pans unfolded in ${blanks} blanks, ${pans - made} more refused with a reason, ${compared} runs and widths compared, ${seconds.toFixed(1)} s`,
  );
  console.log(`  ${handed} parts are not their own image, so that the mirror tells`);
  console.log(
    `  the usual parts of ${whole.sets} of them, flange and all: ${whole.worst.toExponential(1)} mm from their image, ${whole.handed} handed`,
  );
  if (whole.worst > BOUNDS.mirror) process.exitCode = 1;
  for (const [key, bound] of Object.entries(BOUNDS)) {
    const kept = worst[key] <= bound;
    console.log(
      `  ${key.padEnd(15)} ${worst[key].toExponential(1)}  bound ${bound}${kept ? '' : '  PASSED ITS BOUND'}`,
    );
    if (!kept) process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true });
}
