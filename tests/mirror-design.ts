import type { Baffle, Box, Design, Notch, Plane, Rod, Shape } from 'pan-core/design/index.js';

type P2 = readonly [number, number];
type P3 = readonly [number, number, number];

const flip = ([x, y, z]: P3): P3 => [x, -y, z];
const flipPair = ([x, y]: P2): P2 => [x, -y];
const flipSpan = (span: P2 | null): P2 | null => (span === null ? null : [-span[1], -span[0]]);
const flipBox = <T extends { readonly min: P3; readonly max: P3 }>(box: T): T => ({
  ...box,
  min: [box.min[0], -box.max[1], box.min[2]],
  max: [box.max[0], -box.min[1], box.max[2]],
});

/** A prism along x or z and a scan have no mirror here; no test asks for one. */
const flipShape = (s: Shape): Box | Rod | Plane => {
  if (s.kind === 'prism' || s.kind === 'scan') throw new Error(`no mirror for a ${s.kind}`);
  if (s.kind === 'box') return flipBox(s);
  if (s.kind === 'plane') return { ...s, at: flip(s.at), normal: flip(s.normal) };
  const { positions, ...rod } = s;
  const ends = { ...rod, from: flip(s.from), to: flip(s.to), travel: flip(s.travel) };
  return positions === undefined
    ? ends
    : { ...ends, positions: positions.map(([a, b]) => [flip(a), flip(b)] as const) };
};

const flipNotch = (n: Notch): Notch => {
  if (n.kind === 'box') return flipBox(n);
  if (n.along === 'y') return { ...n, from: -n.to, to: -n.from };
  // Drawn in [y, z] when along x and in [x, y] when along z.
  const across = n.along === 'x' ? 0 : 1;
  const [a, b, c] = n.triangle.map((p) => (across === 0 ? ([-p[0], p[1]] as P2) : ([p[0], -p[1]] as P2)));
  return { ...n, triangle: [c as P2, b as P2, a as P2] };
};

const flipBaffle = (b: Baffle): Baffle => {
  if (b.kind === 'lid')
    return { ...b, span: flipSpan(b.span), holes: b.holes.map((h) => ({ ...h, at: flipPair(h.at) })) };
  if (b.run === 'along') return { ...b, at: -b.at };
  return {
    ...b,
    span: flipSpan(b.span),
    doors: b.doors.map((door) => ({ ...door, at: -door.at })),
    holes: b.holes.map((h) => ({ ...h, at: [-h.at[0], h.at[1]] as const })),
  };
};

/** The same design seen in a mirror along the car: left is right, everything else stays. */
export const mirrored = (design: Design): Design => {
  const { engine, pan, pickup, drain, chassis } = design;
  const turned = <T extends { readonly shape: Box | Rod | Plane | Shape }>(items: readonly T[]): T[] =>
    items.map((item) => ({ ...item, shape: flipShape(item.shape as Shape) }));
  return {
    ...design,
    engine: {
      ...engine,
      rail: { ...engine.rail, outline: engine.rail.outline.map(flipPair).reverse() },
      railHoles: engine.railHoles.map((hole) => ({ ...hole, at: flipPair(hole.at) })),
      tilt: engine.tilt === null ? null : { ...engine.tilt, leanLeft: -engine.tilt.leanLeft },
      inside: turned(engine.inside),
      carries: turned(engine.carries),
    },
    pan: {
      ...pan,
      left: pan.right,
      right: pan.left,
      wings: pan.wings.map((w) => ({ ...w, side: w.side === 'left' ? 'right' : 'left' })),
      notches: pan.notches.map(flipNotch),
    },
    baffles: design.baffles.map(flipBaffle),
    pickup: { ...pickup, at: flipPair(pickup.at), route: pickup.route.map(flip) },
    drain: drain === null ? null : { ...drain, at: flipPair(drain.at) },
    bungs: design.bungs.map((b) => ({ ...b, at: flip(b.at), toward: flip(b.toward) })),
    chassis: { ...chassis, obstacles: turned(chassis.obstacles) },
  };
};
