import type { Baffle, Design, Load, Wall } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import {
  AT_REST,
  createOilSystem,
  createOriented,
  limitToward,
  loadToward,
  type OilSystem,
  restAnswer,
} from 'pan-core/oil/index.js';
import { createScene } from 'pan-core/oil/pools.js';
import { ramp } from 'pan-core/oil/ramp.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { mirrored } from '../mirror-design.js';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';
import { randomDesign } from '../random-design.js';
import { stepDesign } from '../sample-design.js';

const SEED = 2_306;
const named = (what: string): string => `${what} (seed ${SEED})`;

const diceFrom = (seed: number) => {
  const next = randomFrom(seed);
  return {
    between: (low: number, high: number): number => low + (high - low) * next(),
    direction: (): number => 5 * Math.floor(72 * next()),
  };
};

/** The first design from this seed on that holds oil. */
const designFrom = (seed: number, change: (d: Design) => Design = (d) => d) => {
  for (let s = seed; ; s += 1_000_003) {
    const design = change(randomDesign(s));
    try {
      return { design, seed: s, system: createOilSystem(buildPan(design)) };
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
};

const flippedBaffle = (b: Baffle): Baffle => {
  const span = b.span === null ? null : ([-b.span[1], -b.span[0]] as const);
  if (b.kind === 'lid') return { ...b, span, holes: b.holes.map((h) => ({ ...h, at: [h.at[0], -h.at[1]] })) };
  if (b.run === 'along') return { ...b, at: -b.at };
  return { ...b, span, doors: b.doors.map((d) => ({ ...d, at: -d.at })) };
};

const mirror = (design: Design): Design => ({
  ...mirrored(design),
  pan: {
    ...mirrored(design).pan,
    notches: design.pan.notches.map((n) =>
      n.kind === 'box'
        ? { ...n, min: [n.min[0], -n.max[1], n.min[2]], max: [n.max[0], -n.min[1], n.max[2]] }
        : n,
    ),
  },
  baffles: design.baffles.map(flippedBaffle),
});

describe(named('a mirrored pan has the mirrored limits'), () => {
  const dice = diceFrom(SEED);
  const rows = Array.from({ length: 14 }, (_, i) => ({
    pan: i,
    toward: dice.direction(),
    volume: dice.between(2.5, 6) * 1e6,
  }));
  test.each(rows)('pan $pan toward $toward deg', ({ pan, toward, volume }) => {
    const { design, seed, system } = designFrom(SEED + pan);
    const other = createOilSystem(buildPan(mirror(design)));
    const [one, two] = [
      limitToward(system, volume, toward),
      limitToward(other, volume, (360 - toward) % 360),
    ];
    for (const state of ['held', 'settled'] as const) {
      const what = `${state}, pan of seed ${seed}`;
      if (one[state] === null || two[state] === null) expect(two[state], what).toBe(one[state]);
      else expectWithin(two[state], one[state], 5e-6, what);
    }
  });
});

describe(named('more oil never bares earlier'), () => {
  const FILLS = [2, 2.8, 3.6, 4.4, 5.2, 6, 6.8].map((litres) => litres * 1e6);
  const dice = diceFrom(SEED + 1);
  const kinds: readonly (readonly [string, (d: Design) => Design])[] = [
    ['bare', (d) => ({ ...d, baffles: [], pan: { ...d.pan, wings: [], notches: [] } })],
    ['baffled', (d) => d],
  ];
  const rows = kinds.flatMap(([kind, change]) =>
    Array.from({ length: 30 }, (_, pan) => ({ kind, change, pan, toward: dice.direction() })),
  );
  test.each(rows)('$kind pan $pan toward $toward deg', ({ kind, change, pan, toward }) => {
    const { seed, system } = designFrom(SEED + 100 + pan, change);
    const limits = FILLS.map((volume) => limitToward(system, volume, toward));
    for (const state of ['held', 'settled'] as const) {
      const found = limits.map((limit) => limit[state] ?? Infinity);
      found.forEach((g, i) => {
        const before = found[i - 1] ?? 0;
        const what = `${state}, ${kind} pan of seed ${seed}, ${FILLS[i]} mm³: ${found.map((v) => v.toFixed(4)).join(' ')}`;
        expect(g, what).toBeGreaterThanOrEqual(before - 5e-6);
      });
    }
  });
});

describe(named('a door shut for ever equals a wall without it'), () => {
  const wall = (doors: Wall['doors']): Wall => ({
    kind: 'wall',
    name: 'wall',
    run: 'across',
    at: 220,
    span: null,
    topDown: 90,
    weep: 0,
    fixed: 'welded',
    thickness: 0,
    doors,
    holes: [],
  });
  const systemWith = (doors: Wall['doors']): OilSystem =>
    createOilSystem(
      buildPan(
        stepDesign((d) => {
          d.baffles = [structuredClone(wall(doors)) as (typeof d.baffles)[number]];
        }),
      ),
    );
  const door = (letsOil: 'forward' | 'rearward') => systemWith([{ size: [60, 45], at: 20, up: 10, letsOil }]);
  const plain = systemWith([]);
  const dice = diceFrom(SEED + 2);
  const rows = Array.from({ length: 12 }, (_, i) => ({
    pan: i,
    volume: dice.between(2, 5.5) * 1e6,
    toward: dice.direction(),
    g: dice.between(0.1, 1.4),
  }));

  /**
   * Oil at the mouth after a load, from the rest with the door: it is open then, so that a pan without one
   * would start with its rooms filled otherwise.
   */
  const atMouth = (system: OilSystem, volume: number, load: Load, gating: 'held' | 'settled'): number => {
    const start = restAnswer(door('forward'), volume).rest.state;
    const scene = createScene(createOriented(system.body), system.ways[gating]);
    const state = ramp(system.model.design, scene, start, [AT_REST, load]);
    return state.pools[state.of[system.model.mouth.cell] ?? -1]?.volume ?? 0;
  };

  test.each(rows)('held, $volume mm³ toward $toward deg at $g g', ({ volume, toward, g }) => {
    const load = loadToward(toward, g);
    const without = atMouth(plain, volume, load, 'held');
    for (const way of ['forward', 'rearward'] as const)
      expectWithin(atMouth(door(way), volume, load, 'held'), without, 1e-3, `oil at the mouth, mm³, ${way}`);
  });

  test.each(rows)(
    'settled: accelerating never opens a door that lets oil forward, $volume mm³ at $g g',
    ({ volume, g }) => {
      const load = loadToward(180, g);
      const without = atMouth(plain, volume, load, 'settled');
      expectWithin(atMouth(door('forward'), volume, load, 'settled'), without, 1e-3, 'oil at the mouth, mm³');
      // The same door the other way round does run, so that the comparison means something.
      expect(atMouth(door('rearward'), volume, load, 'settled')).toBeGreaterThan(without + 1000);
    },
  );
});
