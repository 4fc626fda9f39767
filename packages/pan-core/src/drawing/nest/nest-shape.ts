import { type Path, pathBox, pathPoints } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';

type Clipper = typeof import('clipper2-ts');

/** Units a mm: the clipping works in whole numbers. */
export const UNITS = 100;
/** How far a chord may leave its arc, mm; the clearance of a part with arcs is larger by as much. */
const CLEAR = 0.4;

/** Rings in whole hundredths of a mm: the outer one first, counter-clockwise, the edges of holes clockwise. */
export type Ring = readonly { readonly x: number; readonly y: number }[];

/** A part turned for a sheet, with half the gap round it, its box's lower left corner at 0, 0. */
export interface NestShape {
  /** Quarter turns from the drawing. */
  readonly turn: number;
  /** The part's rings before any turn, the same object in all of its shapes. */
  readonly base: readonly Ring[];
  /** Lower left corner of the turned rings, units, and from the drawing, turned, to this place, mm. */
  readonly low: Vec2;
  readonly shift: Vec2;
  readonly rings: readonly Ring[];
  /** Length and width of the box, units. */
  readonly size: Vec2;
}

/** A part's shapes, one for each turn asked for: all the same rings, turned without rounding. */
export const nestShapes = (
  part: Part,
  turns: readonly number[],
  gap: number,
  clipper: Clipper,
): readonly NestShape[] => {
  const paths = [part.outline, ...part.openings];
  const clear = paths.some((path) => path.some((piece) => piece.kind === 'arc')) ? CLEAR : 0;
  const grown = clipper.inflatePaths(
    paths.map((path, i) => oriented(ring(path), i === 0)),
    (gap / 2 + clear) * UNITS,
    clipper.JoinType.Miter,
    clipper.EndType.Polygon,
    2,
  );
  // The clipping puts rings in an order of its own; the edge of the part is the one that runs round the others.
  const ordered = [...grown].sort((a, b) => Number(clipper.isPositive(b)) - Number(clipper.isPositive(a)));
  return turns.map((turn) => placed(ordered, turn));
};

/** The box round a part with half the gap round it, in the turns that look different. */
export const boxShapes = (part: Part, turns: readonly number[], gap: number): readonly NestShape[] => {
  const { min, max } = pathBox(part.outline);
  const grow = gap / 2;
  const [x0, y0, x1, y1] = [min[0] - grow, min[1] - grow, max[0] + grow, max[1] + grow].map((v) =>
    Math.round(v * UNITS),
  ) as [number, number, number, number];
  const corners = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  return turns.slice(0, 2).map((turn) => placed([corners], turn));
};

const placed = (base: readonly Ring[], turn: number): NestShape => {
  const rings = base.map((one) => one.map((p) => quarterTurned(p, turn)));
  const points = rings.flat();
  const low: Vec2 = [Math.min(...points.map((p) => p.x)), Math.min(...points.map((p) => p.y))];
  const high: Vec2 = [Math.max(...points.map((p) => p.x)), Math.max(...points.map((p) => p.y))];
  return {
    turn,
    base,
    low,
    shift: [-low[0] / UNITS, -low[1] / UNITS],
    rings: rings.map((one) => one.map((p) => ({ x: p.x - low[0], y: p.y - low[1] }))),
    size: [high[0] - low[0], high[1] - low[1]],
  };
};

/** A point turned counter-clockwise about 0, 0 by so many quarters of a turn, which may be negative. */
export const quarterTurned = <P extends { readonly x: number; readonly y: number }>(
  { x, y }: P,
  turn: number,
): { x: number; y: number } => {
  switch (((turn % 4) + 4) % 4) {
    case 1:
      return { x: -y, y: x };
    case 2:
      return { x: -x, y: -y };
    case 3:
      return { x: y, y: -x };
    default:
      return { x, y };
  }
};

const ring = (path: Path): Ring =>
  pathPoints(path, CLEAR)
    .slice(0, -1)
    .map(([x, y]) => ({ x: Math.round(x * UNITS), y: Math.round(y * UNITS) }));

const oriented = (loop: Ring, counterClockwise: boolean): { x: number; y: number }[] => {
  const area = loop.reduce((sum, p, i) => {
    const q = loop[(i + 1) % loop.length]!;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
  return area > 0 === counterClockwise ? [...loop] : [...loop].reverse();
};

/** Whether two turns of a part cannot be told apart, by their corners whatever the first one is. */
export const sameShape = (a: NestShape, b: NestShape): boolean => {
  const corners = ({ rings }: NestShape): string =>
    rings
      .flat()
      .map(({ x, y }) => `${Math.round(x / 4)} ${Math.round(y / 4)}`)
      .sort()
      .join();
  return a === b || corners(a) === corners(b);
};
