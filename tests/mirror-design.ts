import type { Box, Design, Plane, Rod, Shape } from 'pan-core/design/index.js';
import type { Mutable } from './sample-design.js';

type P3 = [number, number, number];

const flip = (p: readonly [number, number, number]): P3 => [p[0], -p[1], p[2]];

/** A prism along x or z and a scan have no mirror here; no test asks for one. */
const flipShape = (s: Shape): Mutable<Box | Rod | Plane> => {
  if (s.kind === 'prism' || s.kind === 'scan') throw new Error(`no mirror for a ${s.kind}`);
  if (s.kind === 'box') {
    return { kind: 'box', min: [s.min[0], -s.max[1], s.min[2]], max: [s.max[0], -s.min[1], s.max[2]] };
  }
  if (s.kind === 'rod') {
    const { positions, ...rod } = s;
    const ends = { ...rod, from: flip(s.from), to: flip(s.to), travel: flip(s.travel) };
    return positions === undefined
      ? ends
      : { ...ends, positions: positions.map(([a, b]): [P3, P3] => [flip(a), flip(b)]) };
  }
  return { ...s, at: flip(s.at), normal: flip(s.normal) };
};

/** The same design seen in a mirror along the car: left is right, everything else stays. Baffles as they are. */
export const mirrored = (design: Design): Design => {
  const d = structuredClone(design) as Mutable<Design>;
  d.engine.rail.outline = d.engine.rail.outline.map(([x, y]): [number, number] => [x, -y]).reverse();
  for (const hole of d.engine.railHoles) hole.at = [hole.at[0], -hole.at[1]];
  if (d.engine.tilt !== null) d.engine.tilt.leanLeft *= -1;
  for (const item of [...d.engine.inside, ...d.engine.carries])
    item.shape = flipShape(item.shape) as typeof item.shape;
  [d.pan.left, d.pan.right] = [d.pan.right, d.pan.left];
  for (const wing of d.pan.wings) wing.side = wing.side === 'left' ? 'right' : 'left';
  d.pickup.at = [d.pickup.at[0], -d.pickup.at[1]];
  d.pickup.route = d.pickup.route.map(flip);
  if (d.drain !== null) d.drain.at = [d.drain.at[0], -d.drain.at[1]];
  for (const o of d.chassis.obstacles) o.shape = flipShape(o.shape as Shape);
  return d as Design;
};
