import type { Stroke } from 'pan-core';

export type Point = readonly [number, number];

/** What a path is drawn with; a PDF document is one. */
export interface PathPen {
  readonly moveTo: (x: number, y: number) => unknown;
  readonly lineTo: (x: number, y: number) => unknown;
  readonly bezierCurveTo: (ax: number, ay: number, bx: number, by: number, x: number, y: number) => unknown;
}

/** Arcs go as cubic curves of this sweep at most, which leave a circle by less than 1e-6 of its radius. */
const STEP = Math.PI / 6;

/**
 * Draws a path. Control points of a cubic arc lie 4/3·tan(θ/4)·r along its end tangents: the curve then
 * touches the circle at both ends and the middle.
 *
 * @param to from the path's mm to the document's points
 */
export const drawPath = (pen: PathPen, path: Stroke['path'], to: (p: Point) => Point): void => {
  let last: Point | null = null;
  for (const piece of path) {
    if (last === null || Math.hypot(piece.from[0] - last[0], piece.from[1] - last[1]) > 1e-6)
      pen.moveTo(...to(piece.from));
    if (piece.kind === 'line') pen.lineTo(...to(piece.to));
    else {
      const n = Math.max(1, Math.ceil(Math.abs(piece.sweep) / STEP));
      const step = piece.sweep / n;
      const start = Math.atan2(piece.from[1] - piece.centre[1], piece.from[0] - piece.centre[0]);
      const k = (4 / 3) * Math.tan(step / 4) * piece.radius;
      const at = (a: number, off: number): Point => [
        piece.centre[0] + piece.radius * Math.cos(a) - off * Math.sin(a),
        piece.centre[1] + piece.radius * Math.sin(a) + off * Math.cos(a),
      ];
      for (let i = 0; i < n; i++) {
        const [a, b] = [start + i * step, start + (i + 1) * step];
        pen.bezierCurveTo(...to(at(a, k)), ...to(at(b, -k)), ...to(i + 1 === n ? piece.to : at(b, 0)));
      }
    }
    last = piece.to;
  }
};
