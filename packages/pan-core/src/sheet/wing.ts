import type { Design, Wing } from '../design/index.js';
import { movePath, movePoint, type Path, pathLength, polylinePath, reversePath } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { baffleMarks } from './baffle-mark.js';
import { cutAway } from './belly.js';
import { bungHoles } from './belly-hole.js';
import type { CutJob } from './cut-job.js';
import { FAR, type Facet, mirroredFacet } from './cutter.js';
import { finishRegion } from './finish.js';
import type { Fold, Part } from './part.js';
import { wingPartName } from './part-name.js';
import { developProfile } from './side-plate.js';
import { sideRun } from './side-run.js';
import { layOut, stripEdge, stripFacets } from './strip.js';
import { wingCap } from './wing-cap.js';
import { type WingFrame, wingFrame } from './wing-frame.js';
import { leafFold, outerFace, stripOutline, type WingLeaf, wallOutline, wingLeaf } from './wing-strip.js';

/**
 * A wing's parts: floor, outer wall and top folded from one strip, and a cap at each end. Where the pan's
 * floor bends under the wing the floor is a strip of its own, welded to the outer wall.
 */
export const wingParts = (job: CutJob, wing: Wing): readonly Part[] => {
  const { design, profile, notches: cutters } = job;
  const frame = wingFrame(design, profile, wing);
  const body = frame.oneFloor
    ? foldedStrip(job, frame)
    : [...wallAndTop(job, frame), ...floorStrip(job, frame)];
  return [...body, ...wingCap(design, frame, 'rear', cutters), ...wingCap(design, frame, 'front', cutters)];
};

const sheetOf = (design: Design): Pick<Part, 'quantity' | 'material' | 'thickness' | 'drawnFace'> => ({
  quantity: 1,
  material: design.pan.sheet.material,
  thickness: design.pan.sheet.thickness,
  drawnFace: 'oil side',
});

/** Turns a blank drawn for a left wing into the right one's, and keeps loops running as they should. */
const facing = (frame: WingFrame, loops: readonly Path[]): readonly Path[] =>
  frame.sign === 1 ? loops : loops.map((p) => reversePath(movePath({ mirror: 'x' }, p)));

const facingFold = (frame: WingFrame, fold: Fold): Fold =>
  frame.sign === 1
    ? fold
    : { ...fold, from: movePoint({ mirror: 'x' }, fold.from), to: movePoint({ mirror: 'x' }, fold.to) };

/** Bung holes, baffle lines and flat stretches of a strip drawn for a left wing. */
const fittings = (
  job: CutJob,
  frame: WingFrame,
  facets: readonly Facet[],
): Pick<Part, 'holes' | 'marks'> & { readonly faces: readonly Facet[] } => ({
  faces: frame.sign === 1 ? facets : facets.map(mirroredFacet),
  holes: bungHoles(job.design, facets).map((h) =>
    frame.sign === 1 ? h : { ...h, at: movePoint({ mirror: 'x' }, h.at) },
  ),
  marks: baffleMarks(facets, job.plates).map((m) =>
    frame.sign === 1 ? m : { ...m, path: movePath({ mirror: 'x' }, m.path) },
  ),
});

const seamToBelly = (frame: WingFrame, edge: Path): string =>
  `Seam to the belly: ${pathLength(edge).toFixed(0)} mm along the floor, inside faces flush, under the ${frame.wing.side} side plate's opening.`;

const TOP_NOTE =
  'The top’s inner edge stops short of the pan’s inside and butts on the outside of the side plate.';

const wallEdge = (leaf: WingLeaf): Path => polylinePath(leaf.rim.slice(1, -1), false);

const foldedStrip = (job: CutJob, frame: WingFrame): readonly Part[] => {
  const { design, rule, notches: cutters } = job;
  const { bendRadius, thickness } = design.pan.sheet;
  const outer = outerFace(frame);
  const floor = wingLeaf(frame, outer, 'floor', bendRadius, thickness, rule);
  const top = wingLeaf(frame, outer, 'top', bendRadius, thickness, rule);
  const facets = [floor.face, floor.zone, boundedOuter(outer, floor, top), top.zone, top.face];
  const region = cutAway({ loops: [stripOutline(floor, top)] }, facets, cutters);
  const folds = [leafFold(floor, 'foot', bendRadius), leafFold(top, 'top edge', bendRadius)];
  return finishRegion(
    {
      ...sheetOf(design),
      name: wingPartName(frame.wing, 'strip'),
      what: `Floor, outer wall and top of the wing "${frame.wing.name}", folded from one strip.`,
      folds: folds.map((f) => facingFold(frame, f)),
      ...fittings(job, frame, facets),
      notes: [
        `Inside face up; top at the top, front of the car at the ${frame.sign === 1 ? 'right' : 'left'}. Bends: ${rule.words}.`,
        seamToBelly(frame, wallEdge(floor)),
        TOP_NOTE,
      ],
    },
    { loops: facing(frame, region.loops) },
  );
};

/** Outer wall and top from one strip, for a wing over a floor that bends. */
const wallAndTop = (job: CutJob, frame: WingFrame): readonly Part[] => {
  const { design, rule, notches: cutters } = job;
  const { bendRadius, thickness } = design.pan.sheet;
  const outer = outerFace(frame);
  const top = wingLeaf(frame, outer, 'top', bendRadius, thickness, rule);
  const rows = [frame.rear, frame.front].map((x) => [x, frame.outer(x)] as const);
  const run = sideRun(rows, frame.wing.side, frame.rear, frame.front, design.pan.sheet, rule.allowance);
  const outline = wallOutline(developProfile(frame.foot, run), top);
  const facets = [boundedOuter(outer, null, top), top.zone, top.face];
  const region = cutAway({ loops: [outline] }, facets, cutters);
  return finishRegion(
    {
      ...sheetOf(design),
      name: wingPartName(frame.wing, 'wall and top'),
      what: `Outer wall and top of the wing "${frame.wing.name}", folded from one strip.`,
      folds: [facingFold(frame, leafFold(top, 'top edge', bendRadius))],
      ...fittings(job, frame, facets),
      notes: [
        `Inside face up; top at the top, front of the car at the ${frame.sign === 1 ? 'right' : 'left'}. Bends: ${rule.words}.`,
        TOP_NOTE,
      ],
    },
    { loops: facing(frame, region.loops) },
  );
};

const floorStrip = (job: CutJob, frame: WingFrame): readonly Part[] => {
  const { design, rule, notches: cutters } = job;
  const runs = layOut(frame.foot, rule.allowance);
  const facets = stripFacets(runs);
  const inner = stripEdge(runs, (x) => frame.sign * frame.wall(x), frame.stations).points;
  const outer = stripEdge(runs, (x) => frame.sign * frame.outer(x), []).points;
  const [low, high] = frame.sign === 1 ? [inner, outer] : [outer, inner];
  const outline = polylinePath([...low, ...[...high].reverse()], true);
  const folds = runs.flatMap(({ piece, start, length }, i): readonly Fold[] => {
    if (piece.kind !== 'arc') return [];
    const at = start + length / 2;
    const y = (width: (x: number) => number): number => (width(piece.from[0]) + width(piece.to[0])) / 2;
    const ends = [frame.sign * y(frame.wall), frame.sign * y(frame.outer)].sort((a, b) => a - b);
    return [
      {
        name: `floor ${i}`,
        from: [at, ends[0]!],
        to: [at, ends[1]!],
        angle: Math.abs(piece.sweep),
        radius: design.pan.sheet.bendRadius,
        // Walking rear to front, a counter-clockwise arc has the oil inside.
        direction: piece.sweep > 0 ? 'up' : 'down',
        allowance: length,
      },
    ];
  });
  return finishRegion(
    {
      ...sheetOf(design),
      name: wingPartName(frame.wing, 'floor'),
      what: `Floor of the wing "${frame.wing.name}", folded as the belly is.`,
      folds,
      holes: bungHoles(design, facets),
      faces: facets,
      marks: baffleMarks(facets, job.plates),
      notes: [
        `Inside face up; front of the car at the right, left at the top. Bends: ${rule.words}.`,
        seamToBelly(frame, frame.foot),
        'Outer edge to the wing’s wall: corner open, inside edges touching.',
      ],
    },
    cutAway({ loops: [outline] }, facets, cutters),
  );
};

/** The outer wall's flat stretch between the tangent lines of its bends. */
const boundedOuter = (outer: Facet, floor: WingLeaf | null, top: WingLeaf): Facet => {
  const [a, b] = floor?.shoulder ?? [
    [0, -FAR],
    [1, -FAR],
  ];
  const [c, d] = top.shoulder;
  return { ...outer, bounds: [onLine(a, b, -FAR), onLine(a, b, FAR), onLine(c, d, FAR), onLine(c, d, -FAR)] };
};

/** The point of the line through a and b at a place along the blank. */
const onLine = (a: Vec2, b: Vec2, at: number): Vec2 => [
  at,
  a[1] + ((b[1] - a[1]) * (at - a[0])) / (b[0] - a[0]),
];
