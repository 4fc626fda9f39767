// 100 levels along one direction in one sweep, beside the same levels solved one by one, each from the last.
import { loadCore } from './shared/core.mjs';
import { PANS, panOf } from './shared/pans.mjs';

const LEVELS = 100;
const LEAST = 2;
/** The gain is asked for from so many facets up. */
const FROM = 180;
const MOST_MISS = 1e-12;
const SLOPES = [
  [0.6, 0.4],
  [0.05, 0],
  [1e-3, 0],
  [1e-8, 1e-8],
  [0, 0],
];

const core = await loadCore();
const { createBody, createMeasure, createOriented, orient, solveLevel, sweepLevels, upFrom } = core;
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

for (const pan of [PANS[0], { facets: 180, stations: 4, walls: 9 }, ...PANS.slice(1)]) {
  const model = panOf(core, pan);
  const body = createBody(model);
  const cells = model.cells.map((_, c) => c);
  const whole = body.capacity.reduce((a, b) => a + b, 0);
  const volumes = Float64Array.from({ length: LEVELS }, (_, i) => (whole * (i + 0.5)) / LEVELS);
  const facets = body.triangles.length / 3;
  const reps = Math.max(3, Math.round(40_000 / facets));
  console.log(`  ${facets} facets in ${cells.length} cells`);
  for (const slope of SLOPES) {
    const up = upFrom(...slope);
    const oriented = orient(createOriented(body), up);
    const found = { one: new Float64Array(LEVELS), many: new Float64Array(LEVELS) };
    const out = createMeasure();
    const run = {
      one: () => {
        let h = Number.NaN;
        for (let i = 0; i < LEVELS; i++) {
          h = solveLevel(oriented, cells, volumes[i], out, h);
          found.one[i] = h;
        }
      },
      many: () => sweepLevels(oriented, cells, volumes, found.many),
    };
    const times = { one: [], many: [] };
    // Turn about, so that a busy machine slows both alike.
    for (let round = 0; round < 8; round++)
      for (const way of ['one', 'many']) {
        const start = performance.now();
        for (let i = 0; i < reps; i++) run[way]();
        if (round > 0) times[way].push(((performance.now() - start) * 1000) / reps / LEVELS);
      }
    const miss = (levels) =>
      Math.max(
        ...Array.from({ length: facets > 1000 ? 3 : 20 }, (_, k) =>
          Math.floor((k * LEVELS) / (facets > 1000 ? 3 : 20)),
        ).map((i) => {
          const truth = core.exactVolume(model, cells, up, body.origin, levels[i]);
          return Math.abs(core.toNumber(truth - core.exact(volumes[i]))) / whole;
        }),
      );
    const ratio = median(times.one) / median(times.many);
    const [one, many] = [miss(found.one), miss(found.many)];
    const met = (facets < FROM || ratio >= LEAST) && many <= MOST_MISS;
    if (!met) process.exitCode = 1;
    console.log(
      `    slope ${slope.join(', ')}: ${median(times.many).toFixed(2)} µs a level, one by one ${median(times.one).toFixed(2)}: ${ratio.toFixed(1)} ×` +
        `${facets < FROM ? '' : `, ${ratio >= LEAST ? '' : 'NOT '}at least ${LEAST}`}; |V(h) − V| ${many.toExponential(0)} of the whole, one by one ${one.toExponential(0)}`,
    );
  }
}
