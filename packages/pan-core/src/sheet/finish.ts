import { findMaterial } from '../design/index.js';
import {
  clockwise,
  counterClockwise,
  insideRegion,
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
  type Segment,
  segmentMeetings,
  trimSegment,
} from '../geometry/index.js';
import { freeze } from '../numeric/index.js';
import type { Mark, Part, RoundHole } from './part.js';

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
  const pilots = draft.pilots?.map((h): RoundHole => ({ ...h, at: movePoint(move, h.at) }));
  const round = holes.reduce((sum, h) => sum + (Math.PI / 4) * h.diameter * h.diameter, 0);
  const rims = holes.reduce((sum, h) => sum + Math.PI * h.diameter, 0);
  const area = openings.reduce((sum, o) => sum + pathArea(o), pathArea(outline)) - round;
  const density = findMaterial(draft.material)?.density ?? UNKNOWN_DENSITY;
  return freeze({
    ...draft,
    outline,
    openings,
    holes,
    ...(pilots === undefined || pilots.length === 0 ? {} : { pilots }),
    folds: draft.folds.map((f) => ({ ...f, from: movePoint(move, f.from), to: movePoint(move, f.to) })),
    marks: draft.marks.map((m) => ({ ...m, path: movePath(move, m.path) })),
    ...(draft.faces === undefined
      ? {}
      : { faces: draft.faces.map((f) => ({ ...f, at: movePoint(move, f.at) })) }),
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
      ...within(draft, outline, openings),
    }),
  );
};

/** The holes, folds and marks that lie on one piece, folds drawn from its edge to its edge. */
export const within = (
  draft: Omit<Draft, 'outline' | 'openings'>,
  outline: Path,
  openings: readonly Path[],
): Pick<Draft, 'holes' | 'folds' | 'marks'> => ({
  holes: draft.holes.filter((h) => pointInPath(outline, h.at) === 'inside'),
  folds: draft.folds.flatMap((f) => {
    const runs = onMaterial(lineSegment(f.from, f.to), [outline]);
    return runs.length === 0 ? [] : [{ ...f, from: runs[0]!.from, to: runs[runs.length - 1]!.to }];
  }),
  marks: marksWithin(draft.marks, [outline, ...openings]),
});

/** The stretches of marks that lie on the material between loops, each unbroken one a mark of its own. */
export const marksWithin = (marks: readonly Mark[], loops: readonly Path[]): readonly Mark[] =>
  marks.flatMap((mark) =>
    unbroken(mark.path.flatMap((s) => onMaterial(s, loops))).map((path) => ({ ...mark, path })),
  );

/** Runs of pieces that go on from one to the next; the last one joins the first where it ends there. */
const unbroken = (pieces: Path): readonly Path[] => {
  const runs: Segment[][] = [];
  const meets = (a: Segment | undefined, b: Segment | undefined): boolean =>
    a !== undefined && b !== undefined && Math.hypot(a.to[0] - b.from[0], a.to[1] - b.from[1]) < 1e-6;
  for (const piece of pieces) {
    const run = runs[runs.length - 1];
    if (run !== undefined && meets(run[run.length - 1], piece)) run.push(piece);
    else runs.push([piece]);
  }
  const [first, last] = [runs[0], runs[runs.length - 1]];
  if (
    runs.length > 1 &&
    first !== undefined &&
    last !== undefined &&
    meets(last[last.length - 1], first[0])
  ) {
    return [[...last, ...first], ...runs.slice(1, -1)];
  }
  return runs;
};

/** The stretches of a piece that lie on the material between loops. */
export const onMaterial = (piece: Segment, loops: readonly Path[]): Path => {
  const shares = loops.flatMap((loop) => loop.flatMap((s) => segmentMeetings(piece, s).map((m) => m.a)));
  const cuts = [0, ...shares.sort((a, b) => a - b), 1];
  return cuts.slice(1).flatMap((b, i): Path => {
    const a = cuts[i]!;
    const solid = b - a > 1e-9 && insideRegion({ loops }, pointAt(piece, (a + b) / 2));
    return solid ? [trimSegment(piece, a, b)] : [];
  });
};
