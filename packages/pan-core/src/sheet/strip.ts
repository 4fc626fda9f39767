import { distance2, type Path, pointAt, type Segment, segmentLength } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { FAR, type Facet } from './cutter.js';

/** A stretch of a folded strip: a piece of the profile in [x, z] and where it lies along the blank. */
export interface Run {
  readonly piece: Segment;
  readonly start: number;
  readonly length: number;
}

/** Lays a profile out flat: lines at their length, arcs at their bend allowance. */
export const layOut = (profile: Path, allowance: (angle: number) => number): readonly Run[] => {
  let start = 0;
  return profile.map((piece): Run => {
    const length = piece.kind === 'line' ? segmentLength(piece) : allowance(Math.abs(piece.sweep));
    const run = { piece, start, length };
    start += length;
    return run;
  });
};

/** Chords by which a bend zone is taken when something is cut across it. */
const BEND_CHORDS = 8;

/** The inside face of a strip as facets; v is +y, u runs along the profile. */
export const stripFacets = (runs: readonly Run[]): readonly Facet[] =>
  runs.flatMap(({ piece, start, length }): readonly Facet[] => {
    const count = piece.kind === 'line' ? 1 : BEND_CHORDS;
    return Array.from({ length: count }, (_, i): Facet => {
      const a = pointAt(piece, i / count);
      const b = pointAt(piece, (i + 1) / count);
      const chord = distance2(a, b);
      const u: Vec3 = [(b[0] - a[0]) / chord, 0, (b[1] - a[1]) / chord];
      return {
        origin: [a[0], 0, a[1]],
        u,
        v: [0, 1, 0],
        bounds: [
          [0, -FAR],
          [chord, -FAR],
          [chord, FAR],
          [0, FAR],
        ],
        at: [start + (length * i) / count, 0],
        along: [length / count / chord, 0],
        across: [0, 1],
        bend: piece.kind === 'arc',
      };
    });
  });

/** An edge of a strip in the blank, and how far its chords across bends leave the true edge, mm. */
export interface StripEdge {
  readonly points: readonly Vec2[];
  readonly error: number;
}

/**
 * The edge y = width(x) of a strip laid flat, from its start to its end. Between the stations where the
 * width changes its slope a straight run stays straight; a bend zone is crossed by one chord.
 */
export const stripEdge = (
  runs: readonly Run[],
  width: (x: number) => number,
  stations: readonly number[],
): StripEdge => {
  const points: Vec2[] = [];
  let error = 0;
  for (const { piece, start, length } of runs) {
    const [x0, x1] = [piece.from[0], piece.to[0]];
    if (points.length === 0) points.push([start, width(x0)]);
    if (piece.kind === 'line' && x0 !== x1) {
      const cuts = stations
        .map((x) => (x - x0) / (x1 - x0))
        .filter((t) => t > 1e-12 && t < 1 - 1e-12)
        .sort((a, b) => a - b);
      for (const t of cuts) points.push([start + t * length, width(x0 + t * (x1 - x0))]);
    }
    if (piece.kind === 'arc') error = Math.max(error, chordError(piece, width));
    points.push([start + length, width(x1)]);
  }
  return { points, error };
};

/** What a part with such edges says of them. */
export const edgeWords = (error: number): string =>
  `Across bends the edges are drawn straight; the true edge leaves them by up to ${error.toFixed(2)} mm.`;

const chordError = (arc: Segment, width: (x: number) => number): number => {
  const [a, b] = [width(arc.from[0]), width(arc.to[0])];
  let worst = 0;
  for (let i = 1; i < 16; i++) {
    worst = Math.max(worst, Math.abs(width(pointAt(arc, i / 16)[0]) - (a + ((b - a) * i) / 16)));
  }
  return worst;
};
