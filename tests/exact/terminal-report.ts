import type { Check, CheckReport } from 'pan-core';

const check = (over: Partial<Check> & Pick<Check, 'id' | 'group' | 'title'>): Check => ({
  status: 'pass',
  value: null,
  limit: null,
  unit: 'mm',
  because: '',
  try: '',
  margin: 1,
  ...over,
});

const mouth = check({
  id: 'mouth:trail into right:held',
  group: 'mouth',
  title: 'Mouth covered, trail into right, held',
  status: 'fail',
  value: -12.4,
  limit: 10,
  because:
    'The oil held by the lid’s rear edge stands 12 mm under the rim; 0.9 L is left in the mouth’s pool.',
  try: 'Move the lid’s front edge 45 mm forward, to x = 365 mm, or pour 0.6 L more.',
  margin: -2.24,
});
const plug = check({
  id: 'ground:plug',
  group: 'fit',
  title: 'Drain plug to the road',
  status: 'fail',
  value: 99.6,
  limit: 100,
  because: 'The plug hangs 12 mm under the floor; with the engine 4 mm down it clears the road by 99.6 mm.',
  try: 'Use a plug that stands 2 mm below the floor (drain.plug_below: 2).',
  margin: -0.004,
});

/** A made-up report with every kind of line in it. */
export const sampleReport: CheckReport = {
  title: 'Quarry-road estate, long straight six',
  verdict: 'fail',
  counts: { pass: 3, warn: 1, fail: 2, unknown: 1 },
  first: mouth,
  next: plug,
  capacity: { to_rail_L: 11.86, sharp_L: 12.52, shallow_L: 3.31, sump_L: 9.21, never_returns_L: 0.04 },
  levels: { stopped_mm: 71.3, running_mm: 83.9 },
  oil: { poured_L: 7.2, stopped_in_pan_L: 6, running_in_pan_L: 5.3 },
  rests_on: {},
  checks: [
    check({
      id: 'oil:under-rods',
      group: 'oil',
      title: 'Running oil below the rods',
      value: 31.2,
      limit: 25,
      because: 'The rods reach 12 mm below the rail over x = 70 to 172 mm.',
      margin: 0.25,
    }),
    mouth,
    check({
      id: 'mouth:hard stop:settled',
      group: 'mouth',
      title: 'Mouth covered, hard stop, settled',
      status: 'warn',
      value: 14,
      limit: 10,
      because: 'It stays covered, but the pump empties its pool in 2.1 s and the manoeuvre lasts 4 s.',
      try: 'Add a door to the front wall.',
      margin: 0.4,
    }),
    check({
      id: 'crank:throws',
      group: 'crank',
      title: 'Rods to the lid',
      status: 'unknown',
      limit: 6,
      because: 'The throws are not given.',
      try: 'Measure x of each throw from the rear face of the block (engine.crank.throws).',
      margin: 0,
    }),
    plug,
    check({
      id: 'fit:crossmember',
      group: 'fit',
      title: 'Crossmember',
      value: 28,
      limit: 15,
      because: 'Nearest: the step, at x = 341 mm, with the engine rocked 2 deg to the left.',
      margin: 0.86,
    }),
    check({ id: 'fit:shape', group: 'fit', title: 'Bolts can be reached', value: 12, limit: 12, unit: '' }),
  ],
  supply: null,
  engine_moves: '',
  crank_dip: ['hard stop', 'trail into right', 'long left', 'climb', 'roundabout'].flatMap((name, i) =>
    [70, 172, 580].map((x_mm, n) => ({
      case: name,
      throw: n + 1,
      x_mm,
      depth_mm: n === 1 ? null : 11.4 * i - 141,
      state: n === 1 ? null : ('held' as const),
    })),
  ),
  assumed: [
    { path: ['pickup', 'wall'], value: '1.5 mm', why: 'common practice, no source' },
    { path: ['pickup', 'gap'], value: '8 mm', why: 'common practice, no source: 6 to 13 mm' },
    { path: ['baffles', 0, 'wall'], value: '1.5 mm', why: 'common practice, no source' },
  ],
  unknown: [{ path: ['engine', 'crank', 'throws'], what: 'x of each throw', needed: 'for the rod sweep' }],
  measureAgain: ['The crossmember’s rear face: 2 mm either way decides the fit.'],
  sayings: ['Still-oil geometry, not proof: fit an oil-pressure warning and log it before driving hard.'],
};
