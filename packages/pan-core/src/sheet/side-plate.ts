import type { Design, Side } from '../design/index.js';
import {
  type Arc,
  arcThrough,
  distance2,
  lineSegment,
  movePath,
  movePoint,
  type Path,
  pointAt,
  reversePath,
  type Segment,
  trimSegment,
} from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { halfWidthAt, sideSign } from '../pan/index.js';
import { baffleMarks } from './baffle-mark.js';
import { cutAway } from './belly.js';
import { bungHoles } from './belly-hole.js';
import type { CutJob } from './cut-job.js';
import { FAR, type Facet } from './cutter.js';
import { finishRegion } from './finish.js';
import type { Fold, Part } from './part.js';
import { type SideRun, type SideStretch, sideRun } from './side-run.js';
import { wingCutter } from './solid.js';

/**
 * One side plate: the inside profile with its true arcs, developed along the half-width, less what wings and
 * notches take. Drawn with the oil side up and the rail at the top.
 */
export const sideParts = (job: CutJob, side: Side): readonly Part[] => {
  const { design, profile, rule } = job;
  const wings = design.pan.wings.filter((w) => w.side === side);
  const cutters = [...wings.map((w) => wingCutter(design, w)), ...job.notches];
  const { sheet } = design.pan;
  const rows = design.pan[side];
  const rearToFront = reversePath(profile.path);
  const rear = rearToFront[0]!.from[0];
  const front = rearToFront[rearToFront.length - 1]!.to[0];
  const run = sideRun(rows, side, rear, front, sheet, rule.allowance);
  const foot = developProfile(rearToFront, run);
  const outline = [...foot, lineSegment([run.length, 0], [0, 0])];
  const facets = sideFacets(design, side, run);
  const region = cutAway({ loops: [outline] }, facets, cutters);
  const deepest = Math.min(...profile.sharp.map((p) => p[1]));
  const folds = run.folds.map(
    (f, i): Fold => ({
      name: run.folds.length === 1 ? 'upright' : `upright ${i + 1}`,
      from: [f.at, deepest],
      to: [f.at, 0],
      angle: f.angle,
      radius: sheet.bendRadius,
      direction: f.oilInside ? 'up' : 'down',
      allowance: f.allowance,
    }),
  );
  // Seen from the oil the left plate's front is at the right hand, the right plate's at the left.
  const facing = (p: Path): Path => (side === 'right' ? reversePath(movePath({ mirror: 'x' }, p)) : p);
  const turned = (p: Vec2): Vec2 => (side === 'right' ? movePoint({ mirror: 'x' }, p) : p);
  return finishRegion(
    {
      name: `side ${side}`,
      what: `The ${side} wall from rail to floor.`,
      quantity: 1,
      material: sheet.material,
      thickness: sheet.thickness,
      drawnFace: 'oil side',
      faces: facets.map((f) => ({
        ...f,
        at: turned(f.at),
        along: turned(f.along),
        across: turned(f.across),
      })),
      holes: bungHoles(design, facets).map((h) => ({ ...h, at: turned(h.at) })),
      folds: folds.map((f) => ({ ...f, from: turned(f.from), to: turned(f.to) })),
      marks: baffleMarks(facets, job.plates).map((m) => ({ ...m, path: facing(m.path) })),
      notes: [
        `Inside face up; front of the car at the ${side === 'left' ? 'right' : 'left'}, rail at the top.`,
        'Outline is the inside profile: the edge stands on the belly strip’s edge, corner open, inside edges touching.',
        'The top runs up to the rail face of the flange and is faced flush after welding.',
        ...(folds.length > 0
          ? [
              `Upright bends: ${rule.words}. The belly’s edge is cut to sharp corners there; ease it to the bend.`,
            ]
          : []),
        ...wings.map((w) => `Opening to the wing "${w.name}": its edge follows the wing’s top line.`),
      ],
    },
    { loops: region.loops.map(facing) },
  );
};

/** The plate's foot in the blank: lines stay lines, arcs stay arcs where the wall runs straight along x. */
export const developProfile = (profile: Path, run: SideRun): Path =>
  profile.flatMap((piece) => splitAtX(piece, run).flatMap((s) => developPiece(s, run)));

const stretchAt = (run: SideRun, x: number): SideStretch =>
  run.stretches.find((s) => x >= s.x0 && x <= s.x1) ??
  (x < 0 ? run.stretches[0]! : run.stretches[run.stretches.length - 1]!);

const placeOn = (s: SideStretch, [x, z]: Vec2): Vec2 => [s.start + (x - s.x0) * s.stretch, z];

const splitAtX = (piece: Segment, run: SideRun): readonly Segment[] => {
  const inner = run.stretches.slice(1).map((s) => s.x0);
  const shares = inner.flatMap((x) => shareAtX(piece, x)).filter((t) => t > 1e-9 && t < 1 - 1e-9);
  const cuts = [0, ...shares.sort((a, b) => a - b), 1];
  return cuts.slice(1).map((t, i) => trimSegment(piece, cuts[i]!, t));
};

const shareAtX = (piece: Segment, x: number): readonly number[] => {
  const [x0, x1] = [piece.from[0], piece.to[0]];
  if (piece.kind === 'line') return x0 === x1 ? [] : [(x - x0) / (x1 - x0)];
  const reach = (x - piece.centre[0]) / piece.radius;
  if (Math.abs(reach) >= 1) return [];
  const start = Math.atan2(piece.from[1] - piece.centre[1], piece.from[0] - piece.centre[0]);
  return [Math.acos(reach), -Math.acos(reach)].map((angle) => {
    const turn = 2 * Math.PI;
    const along = ((((angle - start) * Math.sign(piece.sweep)) % turn) + turn) % turn;
    return along / Math.abs(piece.sweep);
  });
};

/** Arcs on a slanting wall are parts of ellipses; true arcs stand for them within this, mm. */
const ELLIPSE_ERROR = 0.001;
const MOST_ARCS = 16;

const developPiece = (piece: Segment, run: SideRun): Path => {
  const stretch = stretchAt(run, pointAt(piece, 0.5)[0]);
  const [from, to] = [placeOn(stretch, piece.from), placeOn(stretch, piece.to)];
  if (piece.kind === 'line') return [lineSegment(from, to)];
  if (stretch.stretch === 1) {
    return [{ ...piece, from, to, centre: placeOn(stretch, piece.centre) } satisfies Arc];
  }
  for (let count = 1; ; count *= 2) {
    const arcs = ellipseArcs(piece, stretch, count);
    if (count >= MOST_ARCS || arcs.every((a) => a.error < ELLIPSE_ERROR)) return arcs.map((a) => a.arc);
  }
};

const ellipseArcs = (
  piece: Segment,
  stretch: SideStretch,
  count: number,
): readonly { readonly arc: Segment; readonly error: number }[] =>
  Array.from({ length: count }, (_, i) => {
    const at = (k: number): Vec2 => placeOn(stretch, pointAt(piece, (i + k / 4) / count));
    const arc = arcThrough(at(0), at(2), at(4));
    const off = (p: Vec2): number =>
      arc.kind === 'arc' ? Math.abs(distance2(p, arc.centre) - arc.radius) : 0;
    return { arc, error: Math.max(off(at(1)), off(at(3))) };
  });

/** The wall as facets in the un-mirrored blank: s along the wall from each stretch's rear end, t = z. */
const sideFacets = (design: Design, side: Side, run: SideRun): readonly Facet[] => {
  const rows = design.pan[side];
  const sign = sideSign(side);
  return run.stretches.map((s): Facet => {
    const at = (x: number): Vec3 => [x, sign * halfWidthAt(rows, x), 0];
    const [a, b] = [at(s.x0), at(s.x1)];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const u: Vec3 = [(b[0] - a[0]) / length, (b[1] - a[1]) / length, 0];
    return {
      origin: a,
      u,
      v: [0, 0, 1],
      bounds: [
        [0, -FAR],
        [length, -FAR],
        [length, FAR],
        [0, FAR],
      ],
      at: [s.start, 0],
      along: [((s.x1 - s.x0) * s.stretch) / length, 0],
      across: [0, 1],
      bend: s.bend,
    };
  });
};
