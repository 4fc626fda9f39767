// A flange with a hundred holes, beside the same made by @jscad/modeling's 2-D booleans.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import jscad from '@jscad/modeling';
import { build } from 'esbuild';

const HOLES = 100;
const LEAST_TIMES = 20;
const CLOSE = 1e-12;
const SEGMENTS = 32;
const [LENGTH, WIDTH] = [690, 250];

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pan-bench-'));
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
try {
  const { outputFiles } = await build({
    stdin: {
      contents: `export { sampleDesign } from './sample-design.js';
export { floorProfile } from 'pan-core/pan/index.js';
export { FLANGE_GAP, flangeParts } from 'pan-core/sheet/index.js';`,
      resolveDir: at('..'),
      loader: 'ts',
    },
    alias: { 'pan-core': at('../../packages/pan-core/src') },
    bundle: true,
    format: 'esm',
    platform: 'node',
    write: false,
    logLevel: 'error',
  });
  const file = join(folder, 'flange.mjs');
  writeFileSync(file, outputFiles[0].contents);
  const { FLANGE_GAP, flangeParts, floorProfile, sampleDesign } = await import(pathToFileURL(file).href);
  const places = Array.from({ length: HOLES }, (_, i) => {
    const side = i % 2 === 0 ? 114 : -114;
    return [15 + ((LENGTH - 30) * Math.floor(i / 2)) / (HOLES / 2 - 1), side];
  });
  const design = sampleDesign((d) => {
    d.engine.rail.outline = [
      [0, -WIDTH / 2],
      [LENGTH, -WIDTH / 2],
      [LENGTH, WIDTH / 2],
      [0, WIDTH / 2],
    ];
    d.engine.railHoles = places.map((place) => ({ at: place, thread: 8 }));
  });
  const profile = floorProfile(design);
  const ours = () => flangeParts(design, profile).find((part) => part.name === 'flange');
  const [rear, front] = [profile.sharp.at(-1)[0], profile.sharp[0][0]];
  const width = design.pan.left[0][1] + design.pan.right[0][1];
  const middle = (design.pan.left[0][1] - design.pan.right[0][1]) / 2;
  const d = design.pan.sheet.thickness + FLANGE_GAP;
  const { booleans, primitives, measurements } = jscad;
  const theirs = () =>
    booleans.subtract(
      primitives.rectangle({ size: [LENGTH, WIDTH], center: [LENGTH / 2, 0] }),
      primitives.roundedRectangle({
        size: [front - rear + 2 * d, width + 2 * d],
        center: [(front + rear) / 2, middle],
        roundRadius: d,
        segments: SEGMENTS,
      }),
      ...places.map((center) => primitives.circle({ center, radius: 4.5, segments: SEGMENTS })),
    );
  const times = { ours: [], theirs: [] };
  // Turn about, so that a busy machine slows both alike.
  for (let round = 0; round < 9; round++) {
    for (const [name, run, reps] of [
      ['ours', ours, 40],
      ['theirs', theirs, 1],
    ]) {
      const start = performance.now();
      for (let i = 0; i < reps; i++) run();
      if (round > 0) times[name].push((performance.now() - start) / reps);
    }
  }
  const part = ours();
  const entities = part.outline.length + part.openings.flat().length + part.holes.length;
  const ideal = 4 + 8 + HOLES;
  const opening = (front - rear) * width + 2 * (front - rear + width) * d + Math.PI * d * d;
  const area = LENGTH * WIDTH - opening - (HOLES * Math.PI * 9 * 9) / 4;
  const miss = Math.abs(part.area - area) / area;
  const ratio = median(times.theirs) / median(times.ours);
  const jscadMiss = Math.abs(measurements.measureArea(theirs()) - area) / area;
  const met = ratio >= LEAST_TIMES && entities === ideal && miss <= CLOSE;
  if (!met) process.exitCode = 1;
  console.log(
    `  ${median(times.ours).toFixed(2)} ms with its strongback, booleans ${median(times.theirs).toFixed(1)} ms: ${ratio.toFixed(0)} ×, ${ratio >= LEAST_TIMES ? '' : 'NOT '}at least ${LEAST_TIMES}`,
  );
  console.log(
    `  ${entities} lines, arcs and circles, ideal ${ideal}; area off by ${miss.toExponential(0)} of it, booleans with ${SEGMENTS} chords a circle ${jscadMiss.toExponential(0)}`,
  );
} finally {
  rmSync(folder, { recursive: true });
}
