import { isClosed, movePath, movePoint, type Path, pathPoints, polylinePath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';
import type { NamedPart } from '../cut-plan.js';
import { type Entity, lineEntity, pathEntity, textEntity } from '../dxf/dxf-entity.js';
import { dxfFile } from '../dxf/dxf-file.js';
import { CHARACTER } from '../dxf/dxf-label.js';
import { CHECK_SQUARE, checkSquare, cutLoops, type SheetWords, textColumn } from '../dxf/dxf-part.js';
import { oneLine } from '../one-line.js';
import { trimmed } from '../part-words.js';
import type { NamedSheet, NestGroup } from './nest-group.js';

const CLEAR = 20;
const LETTER = 12;

/**
 * A sheet with its parts where they are cut; folds and marks come with them. The sheet's own edge, what is left
 * of it and every word lie on the note layer.
 *
 * @throws PanError `sheet-cut` for a part that cannot be cut
 */
export const nestDxf = (
  group: NestGroup,
  laid: NamedSheet,
  { title, warning, sentences }: SheetWords,
): string => {
  const { sheet } = group;
  const parts = placedParts(group, laid);
  const foot = -CLEAR;
  const left = CHECK_SQUARE + CLEAR;
  const column = textColumn([left, foot], Math.max(sheet.length - left, 60 * LETTER), [
    ...(warning === null ? [] : [{ text: warning, height: 1.5 * LETTER }]),
    ...[oneLine(title, 100), ...nestWords(group, laid), ...sentences].map((text) => ({
      text,
      height: LETTER,
    })),
  ]);
  const [ux, uy] = laid.used;
  const arrow: readonly Vec2[] = [
    [sheet.length / 2 - 150, sheet.width + CLEAR],
    [sheet.length / 2 + 150, sheet.width + CLEAR],
    [sheet.length / 2 + 130, sheet.width + CLEAR + 8],
  ];
  const entities: Entity[] = [
    ...parts.flatMap(({ part }) => [
      ...cutLoops(part),
      ...part.folds.map((fold) => lineEntity('fold', fold.from, fold.to)),
      ...part.marks.map((mark) => pathEntity('mark', mark.path, isClosed(mark.path))),
    ]),
    pathEntity('note', boxLoop([0, 0], [sheet.length, sheet.width]), true),
    pathEntity(
      'note',
      polylinePath(
        [
          [ux, 0],
          [ux, uy],
          [0, uy],
        ],
        false,
      ),
      false,
    ),
    pathEntity('note', polylinePath(arrow, false), false),
    textEntity('note', [sheet.length / 2, sheet.width + CLEAR + 14], LETTER, 'rolled this way', 0, true),
    ...parts.map(({ part, file }) => nameEntity(part, file)),
    checkSquare([0, foot - CHECK_SQUARE]),
    textEntity('note', [5, foot - CHECK_SQUARE + 5], 4, `${CHECK_SQUARE} mm check square`),
    ...column.entities,
  ];
  return dxfFile(entities, {
    min: [0, Math.min(foot - CHECK_SQUARE, column.foot) - LETTER],
    max: [sheet.length, sheet.width + CLEAR + 30],
  });
};

/** What is cut out of a sheet. */
export const nestCuts = (group: NestGroup, laid: NamedSheet): readonly Entity[] =>
  placedParts(group, laid).flatMap(({ part }) => cutLoops(part));

/** The cut loops alone; the words go in as comments. */
export const bareNestDxf = (
  group: NestGroup,
  laid: NamedSheet,
  { title, warning, sentences }: SheetWords,
): string =>
  dxfFile(nestCuts(group, laid), { min: [0, 0], max: [group.sheet.length, group.sheet.width] }, [
    ...(warning === null ? [] : [warning]),
    oneLine(title, 100),
    ...nestWords(group, laid),
    ...sentences,
  ]);

/** What a sheet is, what lies on it and what is left of it. */
export const nestWords = (
  { material, thickness, sheet, parts }: NestGroup,
  laid: NamedSheet,
): readonly string[] => {
  const counts = parts.flatMap(({ file }, i) => {
    const count = laid.places.filter((place) => place.part === i).length;
    return count === 0 ? [] : [`${count} x ${file}`];
  });
  const size = ([x, y]: Vec2): string => `${x.toFixed(0)} x ${y.toFixed(0)} mm`;
  return [
    `${laid.file}: ${material}, ${trimmed(thickness, 2)} mm, sheet ${size([sheet.length, sheet.width])}`,
    `On it: ${counts.join(', ')}.`,
    `Uses ${size(laid.used)} of it; left: ${laid.remnants.length === 0 ? 'nothing worth keeping' : laid.remnants.map(size).join(' and ')}.`,
    `${trimmed(sheet.gap, 1)} mm between cuts, ${trimmed(sheet.edge, 1)} mm bare rim. The sheet was rolled along its length, and folds run across that.`,
    'The edge of the sheet is a note: do not cut it.',
  ];
};

/** A sheet's parts where they lie. */
export const placedParts = ({ parts }: NestGroup, laid: NamedSheet): readonly NamedPart[] =>
  laid.places.map(({ part: n, turn, shift }) => {
    const { part, file } = parts[n]!;
    const move = { turn, shift };
    return {
      file,
      part: {
        ...part,
        outline: movePath(move, part.outline),
        openings: part.openings.map((opening) => movePath(move, opening)),
        holes: part.holes.map((hole) => ({ ...hole, at: movePoint(move, hole.at) })),
        folds: part.folds.map((f) => ({ ...f, from: movePoint(move, f.from), to: movePoint(move, f.to) })),
        marks: part.marks.map((mark) => ({ ...mark, path: movePath(move, mark.path) })),
      },
    };
  });

const boxLoop = (min: Vec2, max: Vec2): Path =>
  polylinePath([min, [max[0], min[1]], max, [min[0], max[1]]], true);

/** A part's file name where its metal is widest, and no wider than that. */
const nameEntity = (part: Part, file: string): Entity => {
  const { at, width } = widestSpan([part.outline, ...part.openings]);
  const height = Math.max(1.8, Math.min(LETTER, (0.8 * width) / (file.length * CHARACTER)));
  return textEntity('note', [at[0], at[1] - height / 2], height, file, 0, true);
};

/** The widest level stretch of metal on a few lines across a part. */
export const widestSpan = (loops: readonly Path[]): { readonly at: Vec2; readonly width: number } => {
  const rings = loops.map((loop) => pathPoints(loop, 0.5));
  const ys = rings.flat().map((p) => p[1]);
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  let best = { at: rings[0]![0]!, width: 0 };
  // From the middle outwards, and away from it only for clearly more room.
  const shares = Array.from({ length: 15 }, (_, k) => (k + 1) / 16);
  for (const share of shares.sort((a, b) => Math.abs(a - 0.5) - Math.abs(b - 0.5))) {
    const y = low + (high - low) * share;
    const xs = rings
      .flatMap((ring) =>
        ring.slice(1).flatMap((b, i) => {
          const a = ring[i]!;
          return a[1] > y !== b[1] > y ? [a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])] : [];
        }),
      )
      .sort((a, b) => a - b);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const width = xs[i + 1]! - xs[i]!;
      if (width > 1.2 * best.width) best = { at: [(xs[i]! + xs[i + 1]!) / 2, y], width };
    }
  }
  return best;
};
