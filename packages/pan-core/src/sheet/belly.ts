import type { Design } from '../design/index.js';
import {
  distance2,
  type Path,
  pointAt,
  polylinePath,
  reversePath,
  type Segment,
  segmentLength,
  subtractPath,
  trimSegment,
} from '../geometry/index.js';
import type { Corner, Profile } from '../pan/index.js';
import { halfWidthAt } from '../pan/index.js';
import { baffleMarks } from './baffle-mark.js';
import { bellyHoles, mouthMark } from './belly-hole.js';
import { buttTrim } from './butt-trim.js';
import type { CutJob } from './cut-job.js';
import { type Cutter, type Facet, footprint } from './cutter.js';
import { endSealMarks } from './end-seal-mark.js';
import { finishRegion } from './finish.js';
import { cornerNames } from './fold-name.js';
import type { Fold, Part } from './part.js';
import { edgeWords, layOut, type Run, stripEdge, stripFacets } from './strip.js';

/**
 * Front wall, shallow, step, sump floor and rear wall as one folded strip, or as several where a corner is
 * welded. Drawn with the oil side up: along the blank from the rear rail to the front rail, y to the left.
 */
export const bellyParts = (job: CutJob): readonly Part[] => {
  const { design, profile } = job;
  const strips = splitAtWelds(reversePath(profile.path), profile, design.pan.sheet.thickness);
  const names = cornerNames(profile);
  return strips.flatMap((path, i) => {
    const name = strips.length === 1 ? 'belly' : `belly ${i + 1} of ${strips.length}`;
    return bellyStrip(job, path, name, names);
  });
};

/** What a strip is, for people: the place of a single flat piece, else that it is folded. */
const stripWords = (path: Path, profile: Profile): string => {
  if (path.length > 1) return 'Front wall, floor and rear wall as far as they fold from one strip.';
  const [piece, last] = [path[0]!, profile.sharp.length - 1];
  if (distance2(piece.from, profile.sharp[last]!) < 1e-9) return 'Rear wall.';
  if (distance2(piece.to, profile.sharp[0]!) < 1e-9) return 'Front wall.';
  return slope(piece) > STEEP ? 'Step.' : 'A flat piece of the floor.';
};

const bellyStrip = (job: CutJob, path: Path, name: string, names: readonly string[]): readonly Part[] => {
  const { design, profile, rule, notches, plates } = job;
  const { sheet, left, right } = design.pan;
  const runs = layOut(path, rule.allowance);
  const leftEdge = stripEdge(
    runs,
    (x) => halfWidthAt(left, x),
    left.map((row) => row[0]),
  );
  const rightEdge = stripEdge(
    runs,
    (x) => -halfWidthAt(right, x),
    right.map((row) => row[0]),
  );
  const facets = stripFacets(runs);
  const outline = polylinePath([...rightEdge.points, ...[...leftEdge.points].reverse()], true);
  const region = cutAway({ loops: [outline] }, facets, notches);
  const error = Math.max(leftEdge.error, rightEdge.error);
  return finishRegion(
    {
      name,
      what: stripWords(path, profile),
      quantity: 1,
      material: sheet.material,
      thickness: sheet.thickness,
      drawnFace: 'oil side',
      faces: facets,
      holes: bellyHoles(design, facets),
      folds: bellyFolds(design, profile, runs, names),
      marks: [...mouthMark(design, facets), ...baffleMarks(facets, plates), ...endSealMarks(design, facets)],
      notes: [
        `Inside face up; rear rail at the left, left side of the car at the top. Bends: ${rule.words}.`,
        'The ends at the rail run up to the rail face of the flange and are faced flush after welding.',
        'Side plates stand outside this strip: corners open, inside edges touching.',
        ...(error > 0.005 ? [edgeWords(error)] : []),
      ],
    },
    region,
  );
};

/** Takes every cutter out of a region, facet by facet. */
export const cutAway = (
  region: { readonly loops: readonly Path[] },
  facets: readonly Facet[],
  cutters: readonly Cutter[],
): { readonly loops: readonly Path[] } => {
  let left = region;
  for (const cutter of cutters)
    for (const facet of facets) {
      const print = footprint(facet, cutter);
      if (print !== null) left = subtractPath(left, print);
    }
  return left;
};

const bellyFolds = (
  design: Design,
  profile: Profile,
  runs: readonly Run[],
  names: readonly string[],
): readonly Fold[] =>
  runs.flatMap(({ piece, start, length }): readonly Fold[] => {
    if (piece.kind !== 'arc') return [];
    const corner = nearestCorner(profile.corners, pointAt(piece, 0.5));
    const at = start + length / 2;
    const across = (rows: Design['pan']['left']): number =>
      (halfWidthAt(rows, piece.from[0]) + halfWidthAt(rows, piece.to[0])) / 2;
    return [
      {
        name: names[corner.index] ?? 'fold',
        from: [at, -across(design.pan.right)],
        to: [at, across(design.pan.left)],
        angle: Math.abs(piece.sweep),
        radius: design.pan.sheet.bendRadius,
        direction: corner.turn > 0 ? 'up' : 'down',
        allowance: length,
      },
    ];
  });

const nearestCorner = (corners: readonly Corner[], p: readonly [number, number]): Corner =>
  corners.reduce((best, c) => (distance2(c.at, p) < distance2(best.at, p) ? c : best));

/**
 * Parts the profile (rear to front) at welded corners. Where the oil lies outside such a corner the metal
 * of both plates would overlap, so the steeper one stops short.
 */
const splitAtWelds = (path: Path, profile: Profile, thickness: number): readonly Path[] => {
  const strips: Segment[][] = [[]];
  path.forEach((piece) => {
    const strip = strips[strips.length - 1]!;
    const before = strip[strip.length - 1];
    const corner = before && profile.corners.find((c) => !c.folded && distance2(c.at, piece.from) < 1e-9);
    if (before === undefined || corner === undefined || Math.abs(corner.turn) < 1e-9) {
      strip.push(piece);
      return;
    }
    const trim = corner.turn < 0 ? buttTrim(Math.PI - Math.abs(corner.turn), thickness) : 0;
    const shortenBefore = slope(before) >= slope(piece);
    strip[strip.length - 1] = shortenBefore ? shorten(before, 0, trim) : before;
    strips.push([shortenBefore ? piece : shorten(piece, trim, 0)]);
  });
  return strips;
};

/** Rise per length from which a piece of floor counts as a step. */
const STEEP = 0.5;

const slope = (s: Segment): number => Math.abs(s.to[1] - s.from[1]) / segmentLength(s);

const shorten = (s: Segment, atStart: number, atEnd: number): Segment => {
  const length = segmentLength(s);
  return trimSegment(s, atStart / length, 1 - atEnd / length);
};
