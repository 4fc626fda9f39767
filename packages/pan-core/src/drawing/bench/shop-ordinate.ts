import {
  type Arc,
  directionAt,
  type Path,
  type PathBox,
  pathBox,
  type Segment,
  segmentLength,
} from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';
import { line, type PageItem, words } from '../page/page.js';
import { spread } from '../page/spread.js';

/** Corners nearer than this have one dimension, mm. */
const SAME = 0.05;
const SIZE = 2.4;
const GAP = 3;

/**
 * Distances of every corner and upright or level fold from the blank's lower left corner, along its foot and
 * its left side. Where corners stand too close for all to be written, the smaller pieces' are left out.
 *
 * @param box of the part on the page
 */
export const ordinates = (part: Part, box: PathBox, scale: number): readonly PageItem[] => [
  ...scaleAlong(part, box, scale, 0),
  ...scaleAlong(part, box, scale, 1),
];

const scaleAlong = (part: Part, { min, max }: PathBox, scale: number, k: 0 | 1): readonly PageItem[] => {
  const span = max[k] - min[k];
  const shown = wanted(part, k, Math.max(2, Math.floor((span + 8) / GAP)));
  const places = spread(
    shown.map((value) => min[k] + scale * value),
    GAP,
    min[k] - 6,
    max[k] + 6,
  );
  const j = k === 0 ? 1 : 0;
  const rim = min[j];
  const point = (u: number, v: number): Vec2 => (k === 0 ? [u, v] : [v, u]);
  return shown.flatMap((value, i): PageItem[] => {
    const [own, place] = [min[k] + scale * value, places[i] as number];
    return [
      line('thin', point(own, rim - 1), point(own, rim - 2.5), point(place, rim - 5), point(place, rim - 6)),
      words(
        k === 0 ? [place + 0.3 * SIZE, rim - 6.5] : [rim - 6.5, place - 0.3 * SIZE],
        SIZE,
        Number(value.toFixed(1)).toFixed(1),
        k === 0 ? { turned: Math.PI / 2, align: 'right' } : { align: 'right' },
      ),
    ];
  });
};

/** Values to write, rising: the ends, then folds, then corners of the longest pieces. */
const wanted = (part: Part, k: 0 | 1, most: number): readonly number[] => {
  const { min, max } = pathBox(part.outline);
  const length = max[k] - min[k];
  const folds = part.folds.flatMap(({ from, to }) =>
    Math.abs(from[k] - to[k]) < SAME ? [(from[k] + to[k]) / 2 - min[k]] : [],
  );
  const corners = [part.outline, ...part.openings]
    .flatMap((path) => cornersOf(path, k))
    .sort((a, b) => b.weight - a.weight)
    .map(({ value }) => value - min[k]);
  const kept: number[] = [0, length];
  for (const value of [...folds, ...corners])
    if (kept.length < most && kept.every((other) => Math.abs(other - value) > SAME)) kept.push(value);
  return kept.sort((a, b) => a - b);
};

interface Corner {
  readonly value: number;
  readonly weight: number;
}

/** A corner counts for as much as the longer piece that ends in it; a rounded one stands where its sides meet. */
const cornersOf = (path: Path, k: 0 | 1): readonly Corner[] =>
  path.flatMap((piece, i): Corner[] => {
    const before = path[(i + path.length - 1) % path.length] ?? piece;
    const after = path[(i + 1) % path.length] ?? piece;
    const rounding = roundingArc(path, i);
    if (rounding !== null) {
      const sides = Math.max(segmentLength(before), segmentLength(after));
      return [{ value: sharpCorner(rounding)[k], weight: sides }];
    }
    if (roundingArc(path, (i + path.length - 1) % path.length) !== null) return [];
    return [{ value: piece.from[k], weight: Math.max(segmentLength(piece), segmentLength(before)) }];
  });

/** The piece at a place where it is an arc that rounds a corner off: tangent at both ends, no large part of a circle. */
export const roundingArc = (path: Path, i: number): Arc | null => {
  const piece = path[i];
  const before = path[(i + path.length - 1) % path.length];
  const after = path[(i + 1) % path.length];
  if (piece?.kind !== 'arc' || before === undefined || after === undefined) return null;
  if (Math.abs(piece.sweep) <= 0.05 || Math.abs(piece.sweep) >= 0.9 * Math.PI) return null;
  const runsOn = (a: Segment, b: Segment): boolean => {
    const [u, v] = [directionAt(a, 1), directionAt(b, 0)];
    return u[0] * v[0] + u[1] * v[1] > 0.99;
  };
  return runsOn(before, piece) && runsOn(piece, after) ? piece : null;
};

/** Where the tangents at an arc's ends meet: r·tan(sweep/2) along the first one. */
export const sharpCorner = ({ from, centre, sweep }: Arc): Vec2 => {
  const t = Math.tan(sweep / 2);
  return [from[0] - t * (from[1] - centre[1]), from[1] + t * (from[0] - centre[0])];
};
