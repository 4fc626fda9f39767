import type { Design, Point2, Wing } from '../design/index.js';
import type { PlaneTable } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { halfWidthAt, sideSign } from './half-width.js';
import { type Chain, convexChains } from './outside-chain.js';
import type { OutsideLine } from './outside-profile.js';
import { cutPiece, INSIDE, type NamedLoop, type Piece, pieceFromLoops } from './outside-solid.js';
import { wingPlanes } from './wing-room.js';

/** Rows of half-widths of a wall's outside: each run moved out by the thickness, corners mitred. */
export const outsideRows = (rows: readonly Point2[], thickness: number): readonly Point2[] => {
  const slopes = rows.slice(1).map((b, i) => (b[1] - rows[i]![1]) / (b[0] - rows[i]![0]));
  let last = Number.NEGATIVE_INFINITY;
  return rows.map((at, i): Point2 => {
    const before = Math.atan(slopes[i - 1] ?? 0);
    const turn = before - Math.atan(slopes[i] ?? 0);
    const on = thickness * Math.tan(turn / 2);
    const x = at[0] - thickness * Math.sin(before) + on * Math.cos(before);
    last = Math.max(last, x);
    return [last, at[1] + thickness * Math.cos(before) + on * Math.sin(before)];
  });
};

/** The pan without its wings, from the rail plane down. */
export const bodyPieces = (table: PlaneTable, design: Design, line: OutsideLine): readonly Piece[] => {
  const { left, right, sheet } = design.pan;
  const [outLeft, outRight] = [outsideRows(left, sheet.thickness), outsideRows(right, sheet.thickness)];
  const stations = [...outLeft, ...outRight].map((row) => row[0]);
  return convexChains(line, stations).map((chain) =>
    slab(table, chain, {
      low: (x) => -halfWidthAt(outRight, x),
      high: (x) => halfWidthAt(outLeft, x),
      lowName: 'right side',
      highName: 'left side',
      endName: () => INSIDE,
      floorName: (name) => name,
    }),
  );
};

/** A wing with its caps, from the pan's centre plane outward; what lies inside the pan's wall is pan already. */
export const wingPieces = (
  table: PlaneTable,
  design: Design,
  line: OutsideLine,
  wing: Wing,
): readonly Piece[] => {
  const t = design.pan.sheet.thickness;
  const sign = sideSign(wing.side);
  const planes = wingPlanes(design, wing);
  const [rear, front] = [wing.rear - t, wing.front + t];
  const slope = (planes.outer(wing.front) - planes.outer(wing.rear)) / (wing.front - wing.rear);
  const outer = (x: number): number =>
    planes.outer(wing.rear) + slope * (x - wing.rear) + t * Math.hypot(1, slope);
  const fall = Math.tan(wing.topFall);
  const y = halfWidthAt(wing.side === 'left' ? design.pan.left : design.pan.right, wing.rear);
  const top = planes.top(wing.rear, y);
  const dip = (planes.top(wing.front, y) - top) / (wing.front - wing.rear);
  const normal: Vec3 = [dip, sign * fall, 1];
  const point: Vec3 = [wing.rear, sign * y, -top + t * Math.hypot(dip, fall, 1)];
  const ends: Readonly<Record<number, string>> = {
    [rear]: `${wing.name} rear cap`,
    [front]: `${wing.name} front cap`,
  };
  return convexChains(line, [rear, front])
    .filter((chain) => chain.points[0]![0] <= front && chain.points[chain.points.length - 1]![0] >= rear)
    .flatMap((chain) => {
      const [inner, name] = [(): number => 0, `${wing.name} outer`];
      const whole = slab(table, chain, {
        low: sign > 0 ? inner : (x) => -outer(x),
        high: sign > 0 ? outer : inner,
        lowName: sign > 0 ? INSIDE : name,
        highName: sign > 0 ? name : INSIDE,
        endName: (x) => ends[x] ?? INSIDE,
        floorName: () => `${wing.name} floor`,
      });
      const under = cutPiece(table, whole, normal, point, `${wing.name} top`);
      return under === null ? [] : [under];
    });
};

interface SlabSides {
  readonly low: (x: number) => number;
  readonly high: (x: number) => number;
  readonly lowName: string;
  readonly highName: string;
  readonly endName: (x: number) => string;
  readonly floorName: (name: string) => string;
}

const slab = (table: PlaneTable, chain: Chain, sides: SlabSides): Piece => {
  const first = chain.points[0]!;
  const last = chain.points[chain.points.length - 1]!;
  const outline: Vec2[] = [...chain.points, [last[0], 0], [first[0], 0]];
  const names = [
    ...chain.names.map(sides.floorName),
    sides.endName(last[0]),
    'rail plane',
    sides.endName(first[0]),
  ];
  const low = outline.map(([x, z]): Vec3 => [x, sides.low(x), z]);
  const high = outline.map(([x, z]): Vec3 => [x, sides.high(x), z]);
  const walls = outline.map((_, i): NamedLoop => {
    const next = (i + 1) % outline.length;
    return { loop: [low[i]!, low[next]!, high[next]!, high[i]!], name: names[i]! };
  });
  return pieceFromLoops(table, [
    { loop: low, name: sides.lowName },
    { loop: high, name: sides.highName },
    ...walls,
  ]);
};
