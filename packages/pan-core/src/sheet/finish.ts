import { findMaterial } from '../design/index.js';
import {
  clockwise,
  counterClockwise,
  lineSegment,
  mergeRuns,
  movePath,
  movePoint,
  type Path,
  pathArea,
  pathBox,
  pathLength,
  pointAt,
  pointInPath,
  type Region,
  regionPieces,
  segmentMeetings,
} from '../geometry/index.js';
import { freeze } from '../numeric/index.js';
import type { Fold, Part, RoundHole } from './part.js';

/** A part before its sizes are taken. */
export type Draft = Omit<Part, 'flat' | 'area' | 'cutLength' | 'mass'>;

/** Density taken when the material has no row, kg/mm³: that of steel, so that a lift is never guessed light. */
const UNKNOWN_DENSITY = 7.85e-6;

/**
 * Takes a part's sizes from its own lines and arcs and moves it so that its box begins at 0, 0.
 */
export const finishPart = (draft: Draft): Part => {
  const box = pathBox(draft.outline);
  const move = { shift: [-box.min[0], -box.min[1]] as const };
  const outline = movePath(move, mergeRuns(counterClockwise(draft.outline)));
  const openings = draft.openings.map((o) => movePath(move, mergeRuns(clockwise(o))));
  const holes = draft.holes.map((h): RoundHole => ({ ...h, at: movePoint(move, h.at) }));
  const round = holes.reduce((sum, h) => sum + (Math.PI / 4) * h.diameter * h.diameter, 0);
  const rims = holes.reduce((sum, h) => sum + Math.PI * h.diameter, 0);
  const area = openings.reduce((sum, o) => sum + pathArea(o), pathArea(outline)) - round;
  const density = findMaterial(draft.material)?.density ?? UNKNOWN_DENSITY;
  return freeze({
    ...draft,
    outline,
    openings,
    holes,
    folds: draft.folds.map((f) => ({ ...f, from: movePoint(move, f.from), to: movePoint(move, f.to) })),
    marks: draft.marks.map((m) => ({ ...m, path: movePath(move, m.path) })),
    flat: [box.max[0] - box.min[0], box.max[1] - box.min[1]] as const,
    area,
    cutLength: [outline, ...openings].reduce((sum, p) => sum + pathLength(p), 0) + rims,
    mass: area * draft.thickness * density,
  });
};

/** Finishes each connected piece of a region as a part of its own, numbered when there are several. */
export const finishRegion = (draft: Omit<Draft, 'outline' | 'openings'>, region: Region): readonly Part[] => {
  const pieces = regionPieces(region);
  return pieces.map(({ outline, openings }, i) =>
    finishPart({
      ...draft,
      name: pieces.length === 1 ? draft.name : `${draft.name} ${i + 1}`,
      outline,
      openings,
      ...within(draft, outline),
    }),
  );
};

/** The holes, folds and marks that lie on one piece, folds drawn from its edge to its edge. */
const within = (
  draft: Omit<Draft, 'outline' | 'openings'>,
  outline: Path,
): Pick<Draft, 'holes' | 'folds' | 'marks'> => ({
  holes: draft.holes.filter((h) => pointInPath(outline, h.at) === 'inside'),
  folds: draft.folds.flatMap((f) => clipFold(f, outline)),
  marks: draft.marks.filter((m) => m.path.some((s) => pointInPath(outline, pointAt(s, 0.5)) === 'inside')),
});

const clipFold = (fold: Fold, outline: Path): readonly Fold[] => {
  const line = lineSegment(fold.from, fold.to);
  const meetings = outline.flatMap((s) => segmentMeetings(line, s).map((m) => m.a));
  const shares = [0, ...meetings, 1].sort((a, b) => a - b);
  const runs = shares
    .slice(1)
    .map((b, i) => [shares[i]!, b] as const)
    .filter(([a, b]) => b - a > 1e-9 && pointInPath(outline, pointAt(line, (a + b) / 2)) === 'inside');
  if (runs.length === 0) return [];
  return [{ ...fold, from: pointAt(line, runs[0]![0]), to: pointAt(line, runs[runs.length - 1]![1]) }];
};
