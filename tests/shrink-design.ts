import type { Design } from 'pan-core/design/index.js';

const without = <T>(list: readonly T[], i: number): T[] => list.filter((_, k) => k !== i);

/** Designs a step simpler than this one: one thing less, or one thing plainer. */
function* simpler(design: Design): Generator<Design> {
  const { pan, baffles, engine } = design;
  for (const i of baffles.keys()) yield { ...design, baffles: without(baffles, i) };
  for (const i of pan.wings.keys()) yield { ...design, pan: { ...pan, wings: without(pan.wings, i) } };
  for (const i of pan.notches.keys()) yield { ...design, pan: { ...pan, notches: without(pan.notches, i) } };
  for (const [i, baffle] of baffles.entries()) {
    const put = (b: (typeof baffles)[number]): Design => ({
      ...design,
      baffles: baffles.map((other, k) => (k === i ? b : other)),
    });
    if (baffle.holes.length > 0) yield put({ ...baffle, holes: [] });
    if (baffle.span !== null && !(baffle.kind === 'wall' && baffle.run === 'along'))
      yield put({ ...baffle, span: null });
    if (baffle.kind === 'wall' && baffle.doors.length > 0) yield put({ ...baffle, doors: [] });
    if (baffle.kind === 'wall' && baffle.weep > 0) yield put({ ...baffle, weep: 0 });
  }
  if (pan.joints.welded.length < pan.floor.length)
    yield { ...design, pan: { ...pan, joints: { ...pan.joints, welded: pan.floor.map((_, i) => i) } } };
  const width = (rows: Design['pan']['left']): Design['pan']['left'] =>
    rows.map(([x]): [number, number] => [x, rows[0]?.[1] ?? 0]);
  if ([pan.left, pan.right].some((rows) => rows.some(([, y]) => y !== rows[0]?.[1])))
    yield { ...design, pan: { ...pan, left: width(pan.left), right: width(pan.right) } };
  if (engine.tilt !== null && (engine.tilt.noseUp !== 0 || engine.tilt.leanLeft !== 0))
    yield { ...design, engine: { ...engine, tilt: { noseUp: 0, leanLeft: 0 } } };
  if (engine.crankcaseDisplaced !== 0) yield { ...design, engine: { ...engine, crankcaseDisplaced: 0 } };
  for (const grain of [10, 1, 0.1]) {
    const plain = rounded(design, grain);
    if (JSON.stringify(plain) !== JSON.stringify(design)) yield plain;
  }
}

/** Every length of pan, baffles and pickup to the nearest grain, mm. */
const rounded = (design: Design, grain: number): Design => {
  const nearest = <T>(value: T): T => {
    if (typeof value === 'number') return (Math.round(value / grain) * grain) as T;
    if (Array.isArray(value)) return value.map(nearest) as T;
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, nearest(one)])) as T;
  };
  const { floor, left, right, wings, notches } = design.pan;
  return {
    ...design,
    pan: {
      ...design.pan,
      floor: nearest(floor),
      left: nearest(left),
      right: nearest(right),
      wings: wings.map((w) => ({ ...nearest(w), topFall: w.topFall })),
      notches: nearest(notches),
    },
    baffles: nearest(design.baffles),
    pickup: { ...design.pickup, at: nearest(design.pickup.at) },
  };
};

/** The plainest design found that still fails, by leaving out and rounding one thing after the other. */
export const shrunk = (design: Design, fails: (d: Design) => boolean): Design => {
  let now = design;
  for (;;) {
    let next: Design | null = null;
    for (const candidate of simpler(now)) {
      if (!fails(candidate)) continue;
      next = candidate;
      break;
    }
    if (next === null) return now;
    now = next;
  }
};

/** What is left of a design after shrinking, in few words for a report. */
export const shapeOf = ({ title, engine, pan, baffles, pickup }: Design): string =>
  JSON.stringify({
    title,
    rail: engine.rail.outline[2],
    tilt: engine.tilt,
    floor: pan.floor,
    left: pan.left,
    right: pan.right,
    wings: pan.wings,
    notches: pan.notches,
    welded: pan.joints.welded,
    baffles,
    mouth: pickup.at,
  });
