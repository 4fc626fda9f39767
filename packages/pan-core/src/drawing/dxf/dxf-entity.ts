import { PanError } from '../../errors/index.js';
import type { Path, Segment } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { type Group, real, token, whole, words } from './dxf-group.js';

/** The four layers: cut, fold line, mark or engrave, and words for people. */
export type Layer = 'through' | 'fold' | 'mark' | 'note';

/** An entity without its handle and owner, which the file gives it. */
export interface Entity {
  readonly type: 'LWPOLYLINE' | 'LINE' | 'CIRCLE' | 'TEXT';
  readonly layer: Layer;
  readonly body: readonly Group[];
}

// Ends that should meet and are farther apart than this are a fault, not rounding.
const MEET = 1e-6;

const point = (code: number, at: Vec2): Group[] => [real(code, at[0]), real(code + 10, at[1])];

export const lineEntity = (layer: Layer, from: Vec2, to: Vec2): Entity => ({
  type: 'LINE',
  layer,
  body: [token(100, 'AcDbLine'), ...point(10, from), real(30, 0), ...point(11, to), real(31, 0)],
});

export const circleEntity = (layer: Layer, centre: Vec2, radius: number): Entity => {
  if (!(radius > 0)) throw fault(`A circle of radius ${radius} mm cannot be drawn.`);
  return {
    type: 'CIRCLE',
    layer,
    body: [token(100, 'AcDbCircle'), ...point(10, centre), real(30, 0), real(40, radius)],
  };
};

/**
 * A line of words with its lower left corner (or, centred, the middle of its base line) at `at`.
 *
 * @param height of capital letters, mm
 * @param turned radians, counter-clockwise
 */
export const textEntity = (
  layer: Layer,
  at: Vec2,
  height: number,
  text: string,
  turned = 0,
  centred = false,
): Entity => ({
  type: 'TEXT',
  layer,
  body: [
    token(100, 'AcDbText'),
    ...point(10, at),
    real(30, 0),
    real(40, height),
    words(1, text),
    real(50, (turned * 180) / Math.PI),
    token(7, 'Standard'),
    ...(centred ? [whole(72, 1), ...point(11, at), real(31, 0)] : []),
    token(100, 'AcDbText'),
  ],
});

/**
 * A path as one polyline; arcs keep their radius as bulges.
 *
 * bulge = tan(sweep/4), negative clockwise: DXF reference, LWPOLYLINE group 42.
 *
 * @throws PanError `sheet-cut` where pieces do not meet, or a closed path does not close.
 */
export const pathEntity = (layer: Layer, path: Path, closed: boolean): Entity => {
  const pieces = path.flatMap(halved);
  pieces.forEach((piece, i) => {
    const next = pieces[i + 1] ?? (closed ? pieces[0] : undefined);
    if (next !== undefined && apart(piece.to, next.from) > MEET) {
      throw fault(
        `A cut does not join up at x = ${piece.to[0].toFixed(3)}, y = ${piece.to[1].toFixed(3)} mm.`,
      );
    }
  });
  const last = pieces[pieces.length - 1];
  if (last === undefined) throw fault('A cut has no length.');
  const corners = pieces.flatMap((piece): Group[] => [
    ...point(10, piece.from),
    ...(piece.kind === 'arc' ? [real(42, Math.tan(piece.sweep / 4), 12)] : []),
  ]);
  return {
    type: 'LWPOLYLINE',
    layer,
    body: [
      token(100, 'AcDbPolyline'),
      whole(90, pieces.length + (closed ? 0 : 1)),
      whole(70, closed ? 1 : 0),
      real(43, 0),
      ...corners,
      ...(closed ? [] : point(10, last.to)),
    ],
  };
};

/** Arcs past a half turn as two, since a bulge grows without limit towards the full turn. */
const halved = (piece: Segment): readonly Segment[] => {
  if (piece.kind === 'line') return apart(piece.from, piece.to) > 0 ? [piece] : [];
  if (Math.abs(piece.sweep) <= Math.PI) return [piece];
  const sweep = piece.sweep / 2;
  const [x, y] = [piece.from[0] - piece.centre[0], piece.from[1] - piece.centre[1]];
  const middle: Vec2 = [
    piece.centre[0] + x * Math.cos(sweep) - y * Math.sin(sweep),
    piece.centre[1] + x * Math.sin(sweep) + y * Math.cos(sweep),
  ];
  return [
    { ...piece, to: middle, sweep },
    { ...piece, from: middle, sweep },
  ];
};

const apart = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const fault = (message: string): PanError =>
  new PanError({
    code: 'sheet-cut',
    path: [],
    message,
    advice: 'Please report this with the design file that caused it.',
  });
