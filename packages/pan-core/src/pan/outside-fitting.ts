import type { Design, Wing } from '../design/index.js';
import type { PlaneTable } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { fastenerFor } from './fastener.js';
import { halfWidthAt, sideSign } from './half-width.js';
import { outsideRows } from './outside-body.js';
import { outsideHeight } from './outside-chain.js';
import type { OutsideLine } from './outside-profile.js';
import { outerSolid, type Piece, prismPiece, roundBase, sidesAround, stackedSolid } from './outside-solid.js';
import type { OuterSolid } from './panel.js';
import { wingPlanes } from './wing-room.js';

/** Leg of the weld bead that stands in an inward seam, mm; common practice, no source. */
export const BEAD_LEG = 3;
/** How far the corners of a polygon may stand outside a round part, mm. */
const ROUND_SLACK = 0.3;

/** Bolt heads with washers under the flange, as they may stand at any turn of the head. */
export const boltSolids = (design: Design): readonly OuterSolid[] =>
  design.engine.railHoles.map(({ at, thread }, i) => {
    const f = fastenerFor(thread);
    const under = -design.pan.flange.thickness;
    const count = sidesAround(f.washer / 2, ROUND_SLACK);
    const ring = (diameter: number, z: number): readonly Vec3[] =>
      roundBase([at[0], at[1], z], diameter / 2, count);
    return stackedSolid(`bolt head ${i + 1}`, 'bolt', [
      ring(f.washer, under),
      ring(f.washer, under - f.washerThickness),
      ring(f.acrossCorners, under - f.washerThickness - f.headHeight),
    ]);
  });

/** The drain's bung and plug under the floor, with the bead around them. */
export const drainSolids = (design: Design, line: OutsideLine): readonly OuterSolid[] => {
  const { drain } = design;
  if (drain === null) return [];
  const radius = drain.bung / 2;
  const [x, y] = drain.at;
  const floor = outsideHeight(line, x);
  const count = sidesAround(radius, ROUND_SLACK / 2);
  const ring = (r: number, z: number): readonly Vec3[] => roundBase([x, y, z], r, count);
  // The plug reaches up into the pan, so that a sloping floor leaves no slit.
  const up = floor + Math.min(radius, -floor / 2);
  return [
    stackedSolid('drain plug', 'plug', [ring(radius, up), ring(radius, floor - drain.plugBelow)]),
    stackedSolid('drain bung bead', 'bead', [
      ring(radius + BEAD_LEG, floor),
      ring(radius, floor - Math.min(BEAD_LEG, drain.plugBelow)),
    ]),
  ];
};

/**
 * Beads in the inward seams: under the flange all round the body, and around each wing's caps and top.
 * The seams of belly and side plates are open corners that the weld fills to the mitre, which the body has.
 */
export const beadSolids = (table: PlaneTable, design: Design, line: OutsideLine): readonly OuterSolid[] => [
  ...flangeBeads(table, design, line).map((piece) => outerSolid('flange bead', 'bead', piece)),
  ...design.pan.wings.flatMap((wing) =>
    wingBeads(table, design, line, wing).map((piece) => outerSolid(`${wing.name} bead`, 'bead', piece)),
  ),
];

const flangeBeads = (table: PlaneTable, design: Design, line: OutsideLine): readonly Piece[] => {
  const { left, right, sheet, flange } = design.pan;
  const [front, rear] = [line.points[0]![0], line.points[line.points.length - 1]![0]];
  const wall = (rows: readonly Vec2[], sign: 1 | -1): readonly Vec2[] => {
    const out = outsideRows(rows, sheet.thickness);
    const between = out.filter(([x]) => x > rear && x < front);
    const ends = [rear, front].map((x): Vec2 => [x, halfWidthAt(out, x)]);
    return [ends[0]!, ...between, ends[1]!].map(([x, y]): Vec2 => [x, sign * y]);
  };
  // Counter-clockwise from above: rearward along the left, forward along the right.
  const round = [...wall(right, -1), ...[...wall(left, 1)].reverse()];
  const z = -flange.thickness;
  return round.flatMap((p, i) => {
    const q = round[(i + 1) % round.length]!;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (length < 1e-9) return [];
    const u: Vec2 = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
    const section = (at: Vec2, on: number): readonly Vec3[] => {
      const [x, y] = [at[0] + u[0] * on, at[1] + u[1] * on];
      return [
        [x, y, z],
        [x + u[1] * BEAD_LEG, y - u[0] * BEAD_LEG, z],
        [x, y, z - BEAD_LEG],
      ];
    };
    return [threeSided(table, section(p, -BEAD_LEG), section(q, BEAD_LEG), 'flange bead')];
  });
};

const wingBeads = (table: PlaneTable, design: Design, line: OutsideLine, wing: Wing): readonly Piece[] => {
  const t = design.pan.sheet.thickness;
  const sign = sideSign(wing.side);
  const rows = outsideRows(wing.side === 'left' ? design.pan.left : design.pan.right, t);
  const planes = wingPlanes(design, wing);
  const name = `${wing.name} bead`;
  const wall = (x: number): number => halfWidthAt(rows, x);
  const top = (x: number): number => t - planes.top(x, wall(x));
  const cap = (x: number, ahead: 1 | -1): Piece => {
    const section = (z: number): readonly Vec3[] => [
      [x, sign * wall(x), z],
      [x + ahead * BEAD_LEG, sign * wall(x), z],
      [x, sign * (wall(x) + BEAD_LEG), z],
    ];
    return threeSided(table, section(outsideHeight(line, x)), section(top(x)), name);
  };
  const along = (x: number): readonly Vec3[] => [
    [x, sign * wall(x), top(x)],
    [x, sign * wall(x), top(x) + BEAD_LEG],
    [x, sign * (wall(x) + BEAD_LEG), top(x)],
  ];
  const [rear, front] = [wing.rear - t, wing.front + t];
  return [cap(rear, -1), cap(front, 1), threeSided(table, along(rear), along(front), name)];
};

const threeSided = (table: PlaneTable, a: readonly Vec3[], b: readonly Vec3[], name: string): Piece =>
  prismPiece(table, a, b, { base: name, end: name, side: () => name });
