import {
  circlePath,
  isClosed,
  movePath,
  type Path,
  type PathBox,
  pathBox,
  pathPoints,
  pointAt,
} from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part, RoundHole } from '../../sheet/index.js';
import type { Seam } from '../../weld/index.js';
import { oneLine } from '../one-line.js';
import { around, type LabelRoom, labelRoom, wordBox } from '../page/label-room.js';
import { markLine } from '../page/mark-line.js';
import { line, type PageItem, stroke, type Words, words } from '../page/page.js';
import { scaled } from '../page/scale.js';
import { spread } from '../page/spread.js';
import { trimmed } from '../part-words.js';
import { ordinates, roundingArc, sharpCorner } from './shop-ordinate.js';
import { weldArrows } from './weld-arrow.js';

/** Scales of ISO 5455, with its in-between ones, paper over part. */
const SCALES = [5, 2, 1, 1 / 2, 1 / 2.5, 1 / 3, 1 / 4, 1 / 5, 1 / 6, 1 / 8, 1 / 10, 1 / 15, 1 / 20, 1 / 50];
/** Rims of the view's room that dimensions and fold labels take, mm. */
const RIM = { left: 15, foot: 15, right: 9, top: 8 };

/** A view, and the numbers of seams that have no symbol on it. */
export interface ShopView {
  readonly items: readonly PageItem[];
  readonly missing: readonly number[];
}

/** The holes of a part in the order of their numbers: those that are cut, then those drilled after welding. */
export const numberedHoles = ({ holes, pilots = [] }: Part): readonly RoundHole[] => [...holes, ...pilots];

/** The largest scale at which a part and its dimensions fit a room. */
export const viewScale = ({ flat }: Part, room: Vec2): number => {
  const w = room[0] - RIM.left - RIM.right;
  const h = room[1] - RIM.foot - RIM.top;
  return SCALES.find((k) => k * flat[0] <= w && k * flat[1] <= h) ?? Math.min(w / flat[0], h / flat[1]);
};

/**
 * A part as its own drawing has it, made to fit a room on a page: edges, folds and holes with their numbers in
 * the tables, a weld symbol at each seam, marks with their words, and every corner's distance from the lower left one.
 */
export const shopView = (part: Part, seams: readonly Seam[], room: PathBox): ShopView => {
  const scale = viewScale(part, [room.max[0] - room.min[0], room.max[1] - room.min[1]]);
  const { min, max } = pathBox(part.outline);
  const spare: Vec2 = [
    room.max[0] - room.min[0] - RIM.left - RIM.right - scale * part.flat[0],
    room.max[1] - room.min[1] - RIM.foot - RIM.top - scale * part.flat[1],
  ];
  const origin: Vec2 = [room.min[0] + RIM.left + spare[0] / 2, room.min[1] + RIM.foot + spare[1] / 2];
  const shift: Vec2 = [origin[0] - scale * min[0], origin[1] - scale * min[1]];
  const at = (p: Vec2): Vec2 => [shift[0] + scale * p[0], shift[1] + scale * p[1]];
  const put = (path: Path): Path => scaled(path, scale, shift);
  const box: PathBox = { min: at(min), max: at(max) };
  const labels = labelRoom(room);
  coverEdges(labels, part, put);
  // Dimensions and fold labels have their places before words seek theirs.
  labels.cover({ min: [box.min[0] - RIM.left, box.min[1] - 9], max: [box.min[0] - 1, box.max[1] + 2] });
  labels.cover({ min: [box.min[0] - 2, box.min[1] - RIM.foot], max: [box.max[0] + 2, box.min[1] - 1] });
  const folds = foldLabels(part, at, box, room, labels);
  const numbers = numberedHoles(part).flatMap((hole, i) => {
    const found = labels.place(around(at(hole.at), (scale * hole.diameter) / 2, 2.4, String(i + 1)));
    return found === null ? [] : [found];
  });
  const radii = radiusWords(part, at, labels);
  const told = markWords(part, put, labels);
  for (const { path } of part.marks) coverPath(labels, put(path));
  const arrows = weldArrows(part, seams, at, labels);
  const items = [
    ...part.marks.map((mark) => stroke('mark', put(mark.path))),
    ...part.folds.map((fold) => line('fold', at(fold.from), at(fold.to))),
    ...[part.outline, ...part.openings].map((path) => stroke('cut', put(path))),
    ...numberedHoles(part).flatMap((hole, i): PageItem[] => {
      const [[x, y], r] = [at(hole.at), (scale * hole.diameter) / 2];
      const d = r + 0.8;
      return [
        stroke(i < part.holes.length ? 'cut' : 'mark', circlePath([x, y], r)),
        line('thin', [x - d, y], [x + d, y]),
        line('thin', [x, y - d], [x, y + d]),
      ];
    }),
    ...ordinates(part, box, scale),
    ...folds,
    ...numbers,
    ...radii,
    ...arrows.items,
    ...told,
  ];
  return { items, missing: arrows.missing };
};

/** The radius of each rounded corner and of each other arc beside it; of several alike, the ones that find room. */
const radiusWords = (part: Part, at: (p: Vec2) => Vec2, labels: LabelRoom): readonly PageItem[] =>
  [part.outline, ...part.openings].flatMap((path) =>
    path.flatMap((piece, i) => {
      if (piece.kind !== 'arc' || Math.abs(piece.sweep) <= 0.05) return [];
      const rounding = roundingArc(path, i);
      const place = rounding === null ? pointAt(piece, 0.5) : sharpCorner(rounding);
      const found = labels.place(around(at(place), 1, 2.1, `R${trimmed(piece.radius, 2)}`));
      return found === null ? [] : [found];
    }),
  );

/** Words keep clear of edges, holes and fold lines. */
const coverEdges = (labels: LabelRoom, part: Part, put: (path: Path) => Path): void => {
  const folds = part.folds.map((fold): Path => [{ kind: 'line', from: fold.from, to: fold.to }]);
  for (const path of [part.outline, ...part.openings, ...folds]) coverPath(labels, put(path));
  for (const hole of numberedHoles(part)) {
    const { min, max } = pathBox(put(movePath({ shift: hole.at }, circlePath([0, 0], hole.diameter / 2))));
    labels.cover({ min, max });
    const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
    labels.cover({ min: [min[0] - 1, y - 0.1], max: [max[0] + 1, y + 0.1] });
    labels.cover({ min: [x - 0.1, min[1] - 1], max: [x + 0.1, max[1] + 1] });
  }
};

const coverPath = (labels: LabelRoom, path: Path): void => {
  const points = pathPoints(path, 0.1);
  points.slice(1).forEach((b, i) => {
    labels.coverLine(points[i] as Vec2, b, 0.2);
  });
};

/** "F1" and so on beyond the upper or right end of each fold line. */
const foldLabels = (
  part: Part,
  at: (p: Vec2) => Vec2,
  box: PathBox,
  room: PathBox,
  labels: LabelRoom,
): readonly PageItem[] => {
  const ends = part.folds.map((fold, i) => {
    const [a, b] = [at(fold.from), at(fold.to)];
    const steep = Math.abs(b[1] - a[1]) >= Math.abs(b[0] - a[0]);
    const end = (steep ? b[1] > a[1] : b[0] > a[0]) ? b : a;
    return { name: `F${i + 1}`, end, steep };
  });
  const row = (steep: boolean): readonly PageItem[] => {
    const k = steep ? 0 : 1;
    const own = ends.filter((one) => one.steep === steep).sort((p, q) => p.end[k] - q.end[k]);
    const places = spread(
      own.map((one) => one.end[k]),
      steep ? 5 : 3.4,
      room.min[k] + 2,
      room.max[k] - 2,
    );
    return own.flatMap(({ name, end }, i): PageItem[] => {
      const p = places[i] as number;
      const tip: Vec2 = steep ? [p, box.max[1] + 3] : [box.max[0] + 3, p];
      const label = steep
        ? words([p, box.max[1] + 3.8], 2.8, name, { bold: true, align: 'centre' })
        : words([box.max[0] + 3.6, p - 1], 2.8, name, { bold: true });
      labels.place([label]);
      return [line('thin', end, tip), label];
    });
  };
  return [...row(true), ...row(false)];
};

/** What marks are for, along them or in their middle, wherever that covers nothing. */
const markWords = (part: Part, put: (path: Path) => Path, labels: LabelRoom): readonly PageItem[] =>
  part.marks.flatMap((mark) => {
    const path = put(mark.path);
    const line = markLine(path);
    if (line === null || mark.what === '') return [];
    const text = oneLine(mark.what, 60);
    const found = labels.place(isClosed(mark.path) ? inBox(pathBox(path), text) : along(...line, text));
    return found === null ? [] : [found];
  });

/** In the middle of a closed mark, or over or under one that is narrower than the words. */
const inBox = ({ min, max }: PathBox, text: string): readonly Words[] => {
  const middle: Vec2 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const at = (dy: number): Words => words([middle[0], middle[1] - 0.7 + dy], 2.1, text, { align: 'centre' });
  const { min: from, max: to } = wordBox(at(0));
  const half = (max[1] - min[1]) / 2;
  const beside = to[0] - from[0] > max[0] - min[0];
  return (beside ? [half + 1.6, -half - 1.8] : [0, 2.6, -2.6, 5.2, -5.2]).map(at);
};

const along = (from: Vec2, to: Vec2, text: string): readonly Words[] => {
  const straight = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const turned =
    straight > Math.PI / 2 + 1e-9 || straight <= -Math.PI / 2 + 1e-9 ? straight + Math.PI : straight;
  return [0.5, 0.35, 0.65, 0.25, 0.75].flatMap((t) =>
    [0.7, -2].map((off): Words => {
      const p: Vec2 = [
        from[0] + t * (to[0] - from[0]) - off * Math.sin(turned),
        from[1] + t * (to[1] - from[1]) + off * Math.cos(turned),
      ];
      return words(p, 2.1, text, { align: 'centre', turned });
    }),
  );
};
