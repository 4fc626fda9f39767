import {
  type Path,
  pathArea,
  pathBox,
  pathGap,
  pointAt,
  pointInPath,
  type Segment,
  segmentLength,
  segmentMeetings,
} from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { SMALLEST_GAP, SMALLEST_HOLE } from '../../sheet/index.js';
import { chainPieces, type DrawnFile, MEET } from './cut-line.js';

/** A rule of the shop that drawings are held against. */
export type ShopRuleId =
  | 'units'
  | 'closed'
  | 'stray'
  | 'duplicate'
  | 'crossing'
  | 'hole'
  | 'gap'
  | 'text'
  | 'spline';

/** One rule, answered for a whole file. */
export interface ShopRule {
  readonly id: ShopRuleId;
  readonly title: string;
  readonly status: 'pass' | 'warn' | 'fail' | 'unknown';
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly because: string;
  /** Where the first fault lies, mm. */
  readonly at: Vec2 | null;
}

/** What is asked of a file: which layers are cut, and how thick the sheet is if that is known. */
export interface ShopQuestion {
  /** Whether a layer is cut through. */
  readonly isCut: (layer: string) => boolean;
  readonly thickness: number | null;
}

/** More pieces than this are not compared with each other: no sheet part has so many. */
const MOST_PIECES = 20_000;

/** The shop's rules for a drawing to cut from, every one of them, whatever it finds. */
export const shopRules = (file: DrawnFile, { isCut, thickness }: ShopQuestion): readonly ShopRule[] => {
  const drawn = file.pieces.filter(({ layer }) => isCut(layer)).map(({ piece }) => piece);
  const pieces = drawn.filter((piece) => segmentLength(piece) > MEET / 10);
  const dots = drawn.length - pieces.length;
  const twice = doubled(pieces);
  // What is drawn twice is told once, and otherwise looked at as if it were drawn once.
  const again = new Set(twice);
  const single = pieces.filter((piece) => !again.has(piece));
  const { closed, stray, branching } = chainPieces(single);
  const crossings = pieces.length > MOST_PIECES ? null : crossed(single);
  const loose = count(stray.length, 'end meets nothing', 'ends meet nothing');
  return [
    units(file.unit),
    rule(
      'closed',
      'Cut lines closed',
      closed.length === 0 ? 'fail' : 'pass',
      closed.length,
      null,
      'loops',
      closed.length === 0
        ? 'Nothing to cut closes.'
        : `${count(closed.length, 'closed loop', 'closed loops')}.`,
    ),
    counted(
      'stray',
      'No stray ends',
      stray.length + dots,
      stray[0] ?? null,
      dots > 0 ? `${loose}, and ${count(dots, 'piece has', 'pieces have')} no length.` : `${loose}.`,
    ),
    counted(
      'duplicate',
      'No line drawn twice',
      twice.length,
      middleOf(twice[0]),
      `${count(twice.length, 'piece is', 'pieces are')} drawn twice.`,
    ),
    crossings === null
      ? rule(
          'crossing',
          'No lines crossing',
          'unknown',
          null,
          0,
          '',
          `More than ${MOST_PIECES} pieces: not looked at.`,
        )
      : counted(
          'crossing',
          'No lines crossing',
          crossings.length + branching.length,
          crossings[0] ?? branching[0] ?? null,
          `${count(crossings.length, 'pair of pieces crosses or lies', 'pairs of pieces cross or lie')} over each other; ${count(branching.length, 'place has', 'places have')} more than two ends.`,
        ),
    smallestHole(closed, thickness),
    smallestGap(closed, thickness),
    counted(
      'text',
      'No words among the cuts',
      file.texts.filter(isCut).length,
      null,
      `${count(file.texts.filter(isCut).length, 'text lies', 'texts lie')} on a layer that is cut.`,
    ),
    counted(
      'spline',
      'Lines and arcs only',
      file.curves.filter(isCut).length,
      null,
      `${count(file.curves.filter(isCut).length, 'cut is a spline or an ellipse', 'cuts are splines or ellipses')}.`,
    ),
  ];
};

const count = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

const rule = (
  id: ShopRuleId,
  title: string,
  status: ShopRule['status'],
  value: number | null,
  limit: number | null,
  unit: string,
  because: string,
  at: Vec2 | null = null,
): ShopRule => ({ id, title, status, value, limit, unit, because, at });

/** A rule that wants none of something. */
const counted = (id: ShopRuleId, title: string, n: number, at: Vec2 | null, because: string): ShopRule =>
  rule(id, title, n === 0 ? 'pass' : 'fail', n, 0, '', because, at);

const units = (unit: number | null): ShopRule => {
  const title = 'Units said, and mm';
  if (unit === null)
    return rule('units', title, 'fail', null, 1, 'mm', 'The file does not say what its lengths are in.');
  if (unit === 1) return rule('units', title, 'pass', 1, 1, 'mm', 'Lengths are in mm.');
  return rule(
    'units',
    title,
    'warn',
    unit,
    1,
    'mm',
    `One unit of the file is ${unit} mm: say so in the order.`,
  );
};

/** Pieces that lie where an earlier one lies. */
const doubled = (pieces: readonly Segment[]): readonly Segment[] => {
  const seen = new Map<string, Segment[]>();
  return pieces.filter((piece) => {
    const key = pointAt(piece, 0.5)
      .map((v) => Math.round(v / (10 * MEET)))
      .join(' ');
    const others = seen.get(key) ?? [];
    seen.set(key, [...others, piece]);
    return others.some((one) => same(one, piece));
  });
};

const near = (a: Vec2, b: Vec2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= MEET;

const same = (a: Segment, b: Segment): boolean =>
  near(pointAt(a, 0.5), pointAt(b, 0.5)) &&
  ((near(a.from, b.from) && near(a.to, b.to)) || (near(a.from, b.to) && near(a.to, b.from)));

const middleOf = (piece: Segment | undefined): Vec2 | null =>
  piece === undefined ? null : pointAt(piece, 0.5);

/** Where pieces meet other than end on end; swept from the left. */
const crossed = (pieces: readonly Segment[]): readonly Vec2[] => {
  const rows = pieces
    .map((piece) => ({ piece, box: pathBox([piece]) }))
    .sort((a, b) => a.box.min[0] - b.box.min[0]);
  const found: Vec2[] = [];
  rows.forEach(({ piece, box }, i) => {
    for (let k = i + 1; k < rows.length; k++) {
      const other = rows[k]!;
      if (other.box.min[0] > box.max[0]) break;
      if (other.box.min[1] > box.max[1] || other.box.max[1] < box.min[1]) continue;
      const meeting = segmentMeetings(piece, other.piece).find(({ a, b }) => {
        const [p, q] = [pointAt(piece, a), pointAt(other.piece, b)];
        return !(endOf(piece, p) && endOf(other.piece, q));
      });
      if (meeting !== undefined) found.push(pointAt(piece, meeting.a));
    }
  });
  return found;
};

const endOf = (piece: Segment, p: Vec2): boolean => near(piece.from, p) || near(piece.to, p);

/** Loops inside another one; the size of a hole is the diameter of the circle of its area. */
const smallestHole = (loops: readonly Path[], thickness: number | null): ShopRule => {
  const title = 'Smallest hole';
  const holes = loops
    .filter((loop, i) => loops.some((other, k) => k !== i && holds(other, loop)))
    .map((loop) => ({ loop, size: Math.sqrt((4 / Math.PI) * Math.abs(pathArea(loop))) }))
    .sort((a, b) => a.size - b.size);
  const [least] = holes;
  if (least === undefined) return rule('hole', title, 'pass', null, null, 'mm', 'There are no holes.');
  const limit = thickness === null ? null : SMALLEST_HOLE * thickness;
  const size = Number(least.size.toFixed(3));
  const status = limit === null ? 'unknown' : least.size < limit - 1e-9 ? 'warn' : 'pass';
  const because =
    limit === null
      ? 'The sheet’s thickness was not said.'
      : status === 'warn'
        ? 'Smaller than the sheet is thick: mark it and drill (common practice, no source).'
        : 'Holes are no smaller than the sheet is thick (common practice, no source).';
  return rule('hole', title, status, size, limit, 'mm', because, least.loop[0]!.from);
};

const holds = (outer: Path, inner: Path): boolean => {
  const [a, b] = [pathBox(outer), pathBox(inner)];
  const over = a.min[0] <= b.min[0] && a.min[1] <= b.min[1] && a.max[0] >= b.max[0] && a.max[1] >= b.max[1];
  return over && pointInPath(outer, inner[0]!.from) === 'inside';
};

const smallestGap = (loops: readonly Path[], thickness: number | null): ShopRule => {
  const title = 'Smallest gap between cuts';
  const boxes = loops.map(pathBox);
  let least = Number.POSITIVE_INFINITY;
  let at: Vec2 | null = null;
  loops.forEach((loop, i) => {
    for (let k = i + 1; k < loops.length; k++) {
      const [a, b] = [boxes[i]!, boxes[k]!];
      const away = Math.max(
        a.min[0] - b.max[0],
        b.min[0] - a.max[0],
        a.min[1] - b.max[1],
        b.min[1] - a.max[1],
      );
      if (away >= least) continue;
      const gap = pathGap(loop, loops[k]!);
      if (gap < least) [least, at] = [gap, loops[k]![0]!.from];
    }
  });
  if (!Number.isFinite(least)) return rule('gap', title, 'pass', null, null, 'mm', 'There is one loop only.');
  const limit = thickness === null ? null : SMALLEST_GAP * thickness;
  const status = limit === null ? 'unknown' : least < limit ? 'warn' : 'pass';
  const because =
    limit === null
      ? 'The sheet’s thickness was not said.'
      : status === 'warn'
        ? 'Less than half the sheet’s thickness: the web burns away (common practice, no source).'
        : 'At least half the sheet’s thickness (common practice, no source).';
  return rule('gap', title, status, Number(least.toFixed(3)), limit, 'mm', because, at);
};
