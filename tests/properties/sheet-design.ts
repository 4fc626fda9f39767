import type { Design } from 'pan-core/design/index.js';
import { buildPan, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part } from 'pan-core/sheet/index.js';

/** All parts of a design, baffles and notch plates with them. */
export const wholeCut = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};

type P2 = readonly [number, number];
type P3 = readonly [number, number, number];

const flipPoint = ([x, y, z]: P3): P3 => [x, -y, z];
const flipPair = ([x, y]: P2): P2 => [x, -y];

/** The same pan seen in a mirror: left and right change places. */
export const mirrored = (d: Design): Design => ({
  ...d,
  engine: {
    ...d.engine,
    rail: { ...d.engine.rail, outline: [...d.engine.rail.outline].reverse().map(flipPair) },
    railHoles: d.engine.railHoles.map((h) => ({ ...h, at: flipPair(h.at) })),
  },
  pan: {
    ...d.pan,
    left: d.pan.right,
    right: d.pan.left,
    wings: d.pan.wings.map((w) => ({ ...w, side: w.side === 'left' ? 'right' : 'left' })),
    notches: d.pan.notches.map((n) =>
      n.kind === 'box'
        ? { ...n, min: [n.min[0], -n.max[1], n.min[2]], max: [n.max[0], -n.min[1], n.max[2]] }
        : n,
    ),
  },
  pickup: { ...d.pickup, at: flipPair(d.pickup.at), route: d.pickup.route.map(flipPoint) },
  baffles: d.baffles.map((b) => {
    const span = (s: P2 | null): P2 | null => (s === null ? null : [-s[1], -s[0]]);
    if (b.kind === 'lid')
      return { ...b, span: span(b.span), holes: b.holes.map((h) => ({ ...h, at: flipPair(h.at) })) };
    if (b.run === 'along') return { ...b, at: -b.at };
    return {
      ...b,
      span: span(b.span),
      doors: b.doors.map((door) => ({ ...door, at: -door.at })),
      holes: b.holes.map((h) => ({ ...h, at: [-h.at[0], h.at[1]] as const })),
    };
  }),
  drain: d.drain === null ? null : { ...d.drain, at: flipPair(d.drain.at) },
  bungs: d.bungs.map((b) => ({ ...b, at: flipPoint(b.at), toward: flipPoint(b.toward) })),
});
