import {
  circlePath,
  isClosed,
  largestGap,
  type Path,
  type PathBox,
  pathArea,
  pathBox,
  pathCrossings,
  pathGap,
  pointAt,
  pointInPath,
  type Segment,
  segmentLength,
  selfCrossings,
} from '../geometry/index.js';
import type { Part } from './part.js';

/** Something about a part's cut lines: a fault stops the file, a warning is printed with it. */
export interface ShopFinding {
  readonly id:
    | 'number'
    | 'empty'
    | 'open'
    | 'direction'
    | 'duplicate'
    | 'crossing'
    | 'outside'
    | 'small-hole'
    | 'narrow-gap'
    | 'sliver';
  readonly severity: 'fault' | 'warning';
  readonly words: string;
  readonly value: number | null;
  readonly limit: number | null;
}

/** Holes smaller than this share of the thickness are marked and drilled, not cut: common practice, no source. */
export const SMALLEST_HOLE = 1;
/** Metal between two cuts narrower than this share of the thickness burns away: common practice, no source. */
export const SMALLEST_GAP = 0.5;

/** What is wrong with a part's cut lines, or would trouble the cutter; empty when nothing is. */
export const shopFindings = (part: Part): readonly ShopFinding[] => {
  const loops = [part.outline, ...part.openings];
  if (!allFinite(part)) return [fault('number', `${part.name}: a coordinate is not a finite number.`)];
  const shapes = loops.flatMap((loop, i) => loopFaults(part, loop, i));
  if (shapes.length > 0) return shapes;
  const cuts = [
    ...loops.map((path, i) => ({ path, label: i === 0 ? 'the outline' : `opening ${i}` })),
    ...part.holes.map((h) => ({
      path: circlePath(h.at, h.diameter / 2),
      label: `the ${h.diameter} mm hole at ${h.at[0].toFixed(0)}, ${h.at[1].toFixed(0)} mm`,
    })),
  ].map((cut): Cut => ({ ...cut, box: pathBox(cut.path) }));
  return [...between(part, cuts), ...smallHoles(part), ...narrowGaps(part, cuts), ...sliver(part)];
};

const fault = (
  id: ShopFinding['id'],
  words: string,
  value: number | null = null,
  limit: number | null = null,
): ShopFinding => ({
  id,
  severity: 'fault',
  words,
  value,
  limit,
});

const numbersOf = (path: Path): readonly number[] =>
  path.flatMap((s) => [...s.from, ...s.to, ...(s.kind === 'arc' ? [...s.centre, s.radius, s.sweep] : [])]);

const allFinite = (part: Part): boolean =>
  [
    ...[part.outline, ...part.openings, ...part.marks.map((m) => m.path)].flatMap(numbersOf),
    ...part.holes.flatMap((h) => [...h.at, h.diameter]),
    ...part.folds.flatMap((f) => [...f.from, ...f.to, f.angle, f.radius, f.allowance]),
  ].every(Number.isFinite);

const loopFaults = (part: Part, loop: Path, i: number): readonly ShopFinding[] => {
  const where = `${part.name}, ${i === 0 ? 'outline' : `opening ${i}`}`;
  if (loop.length < 2 || loop.some((s) => segmentLength(s) < 1e-6)) {
    return [fault('empty', `${where}: a piece has no length.`)];
  }
  if (!isClosed(loop))
    return [
      fault('open', `${where}: not closed, the largest gap is ${largestGap(loop)} mm.`, largestGap(loop), 0),
    ];
  const out: ShopFinding[] = [];
  const area = pathArea(loop);
  if (i === 0 ? area <= 0 : area >= 0) {
    out.push(fault('direction', `${where}: runs ${i === 0 ? 'clockwise' : 'counter-clockwise'}.`));
  }
  const doubled = loop.filter((s, k) => loop.slice(k + 1).some((t) => samePiece(s, t))).length;
  if (doubled > 0) out.push(fault('duplicate', `${where}: ${doubled} pieces are drawn twice.`, doubled, 0));
  const crossings = selfCrossings(loop);
  if (crossings.length > 0)
    out.push(fault('crossing', `${where}: meets itself ${crossings.length} times.`, crossings.length, 0));
  return out;
};

const samePiece = (s: Segment, t: Segment): boolean => {
  const near = (a: readonly number[], b: readonly number[]): boolean =>
    Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!) < 1e-6;
  const ends = (near(s.from, t.from) && near(s.to, t.to)) || (near(s.from, t.to) && near(s.to, t.from));
  return ends && near(pointAt(s, 0.5), pointAt(t, 0.5));
};

/** A piece narrower than this many thicknesses cannot be held to cut or weld: common practice, no source. */
const SLIVER = 2;

const sliver = (part: Part): readonly ShopFinding[] => {
  const [least, limit] = [Math.min(...part.flat), SLIVER * part.thickness];
  if (least >= limit) return [];
  return [
    {
      id: 'sliver',
      severity: 'warning',
      words: `${part.name}: only ${least.toFixed(1)} mm wide in ${part.thickness} mm sheet; leave it out and fill with weld, or move what cuts it off.`,
      value: least,
      limit,
    },
  ];
};

interface Cut {
  readonly path: Path;
  readonly label: string;
  readonly box: PathBox;
}

const between = (part: Part, cuts: readonly Cut[]): readonly ShopFinding[] => {
  const out: ShopFinding[] = [];
  cuts.forEach((cut, i) => {
    if (i > 0 && pointInPath(part.outline, cut.path[0]!.from) === 'outside') {
      out.push(fault('outside', `${part.name}: ${cut.label} lies outside the outline.`));
    }
    for (const other of cuts.slice(i + 1)) {
      if (!boxesNear(cut, other, 0)) continue;
      const met = pathCrossings(cut.path, other.path).length;
      if (met > 0)
        out.push(
          fault('crossing', `${part.name}: ${cut.label} and ${other.label} cut into each other.`, met, 0),
        );
    }
  });
  return out;
};

const smallHoles = (part: Part): readonly ShopFinding[] => {
  const limit = SMALLEST_HOLE * part.thickness;
  const small = part.holes.filter((h) => h.diameter < limit);
  if (small.length === 0) return [];
  const least = Math.min(...small.map((h) => h.diameter));
  return [
    {
      id: 'small-hole',
      severity: 'warning',
      words: `${part.name}: ${small.length} holes down to ${least} mm in ${part.thickness} mm sheet; mark them and drill.`,
      value: least,
      limit,
    },
  ];
};

const narrowGaps = (part: Part, cuts: readonly Cut[]): readonly ShopFinding[] => {
  const limit = SMALLEST_GAP * part.thickness;
  let least = Number.POSITIVE_INFINITY;
  cuts.forEach((cut, i) => {
    for (const other of cuts.slice(i + 1)) {
      if (boxesNear(cut, other, limit)) least = Math.min(least, pathGap(cut.path, other.path));
    }
  });
  if (!(least > 0 && least < limit)) return [];
  return [
    {
      id: 'narrow-gap',
      severity: 'warning',
      words: `${part.name}: ${least.toFixed(1)} mm of metal between two cuts in ${part.thickness} mm sheet.`,
      value: least,
      limit,
    },
  ];
};

const boxesNear = ({ box: p }: Cut, { box: q }: Cut, reach: number): boolean =>
  p.min[0] - reach <= q.max[0] &&
  q.min[0] - reach <= p.max[0] &&
  p.min[1] - reach <= q.max[1] &&
  q.min[1] - reach <= p.max[1];
