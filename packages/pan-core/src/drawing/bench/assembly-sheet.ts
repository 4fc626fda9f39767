import type { PathBox } from '../../geometry/index.js';
import { add3, length3, scale3, subtract3, type Vec2, type Vec3 } from '../../numeric/index.js';
import type { PanModel } from '../../pan/index.js';
import { processNumbers, type Seam, type Skin } from '../../weld/index.js';
import type { CutPlan } from '../cut-plan.js';
import { oneLine } from '../one-line.js';
import { type LabelRoom, labelRoom } from '../page/label-room.js';
import { line, PAPERS, type Page, type PageItem, type PageSet, type Paper, words } from '../page/page.js';
import { tableBlocks, textBlock } from '../page/table.js';
import { panFaces } from './pan-faces.js';
import { isDrawn, isSeen, parted, type Sight, sightFrom, type ViewFace } from './pan-view.js';
import { COLUMN, columnLine, EDGE, GAP, sheetFrame } from './sheet-frame.js';

/** Where the looker stands, from the middle of the pan: x forward, y left, z up. */
const VIEWS: readonly { readonly words: string; readonly eye: Vec3 }[] = [
  { words: 'From ahead, left and above, into the pan', eye: [0.75, 1, 0.9] },
  { words: 'From behind, right and below', eye: [-0.75, -1, -0.7] },
];

/** The whole pan seen from two corners, its seams by their numbers in the order of welding. */
export const assemblySheets = (plan: CutPlan, model: PanModel, skin: Skin, paper: Paper): PageSet => {
  const faces = panFaces(model, skin);
  return {
    title: `${plan.title}: assembly and seams`,
    pages: VIEWS.map((view, i) => assemblyPage(plan, faces, view, i + 1, paper)),
  };
};

const assemblyPage = (
  plan: CutPlan,
  faces: readonly ViewFace[],
  view: (typeof VIEWS)[number],
  page: number,
  paper: Paper,
): Page => {
  const [height, width] = PAPERS[paper];
  const right = width - EDGE - COLUMN;
  const process = processNumbers(plan.design.pan.sheet.material);
  const foot = textBlock(
    [
      'Not to scale; do not measure on the paper. Thick: seams that are seen from here; broken: seams behind.',
      `S1, S2 … is the order of welding, as in 4-weld/order.txt${process === null ? '' : `; process by ISO 4063: ${process.TIG} TIG or ${process.MIG} MIG`}.`,
      'Local codes and a licensed welder decide where strength matters.',
    ],
    right - EDGE - GAP,
    2.4,
  );
  const head = plan.warning === null ? 12 : 18;
  const room: PathBox = {
    min: [EDGE + 3, EDGE + foot.height + 3],
    max: [right - GAP, height - EDGE - head],
  };
  const rows = plan.seams.map((seam) => [`S${seam.number}`, oneLine(seam.name, 60), seam.joint, seam.side]);
  const [table] = tableBlocks('Seams in order', COLUMNS, rows, rows.length, rows.length);
  const squeeze = Math.min(1, (height - 2 * EDGE - 4) / (table?.height ?? 1));
  return {
    width,
    height,
    items: [
      ...sheetFrame(width, height),
      columnLine(width, height),
      words([EDGE + 3, height - EDGE - 6.5], 4.4, `${plan.title}: assembly`, {
        bold: true,
        room: right - EDGE - 8,
      }),
      words([EDGE + 3, height - EDGE - 10.8], 2.8, `${view.words}; page ${page} of ${VIEWS.length}`),
      ...(plan.warning === null
        ? []
        : [words([EDGE + 3, height - EDGE - 16], 3.4, plan.warning, { bold: true, room: right - EDGE - 8 })]),
      ...picture(plan, faces, sightFrom(view.eye), room),
      ...foot.draw([EDGE + 2, EDGE + foot.height + 0.5]),
      ...(table === undefined || squeeze < 1
        ? seamLines(plan.seams, [right, height - EDGE - 2], height - 2 * EDGE - 4)
        : table.draw([right, height - EDGE - 1])),
    ],
  };
};

const COLUMNS = [
  { head: 'No.', width: 9 },
  { head: 'Seam', width: 46 },
  { head: 'Joint', width: 17 },
  { head: 'Side', width: 12 },
];

/** More seams than a table has rows for: a line each, as small as it must be. */
const seamLines = (seams: readonly Seam[], [x, y]: Vec2, room: number): readonly PageItem[] => {
  const step = Math.min(3, room / Math.max(1, seams.length));
  return seams.map((seam, i) =>
    words(
      [x, y - (i + 0.8) * step],
      0.78 * step,
      `S${seam.number} ${oneLine(seam.name, 60)}, ${seam.joint}`,
      {
        room: COLUMN - 2,
      },
    ),
  );
};

const picture = (
  plan: CutPlan,
  faces: readonly ViewFace[],
  sight: Sight,
  room: PathBox,
): readonly PageItem[] => {
  const at = fitted(faces, sight, room);
  const labels = labelRoom(room);
  const drawn = faces.flatMap((face) =>
    face.loop.flatMap((a, i, loop): PageItem[] => {
      if (!isDrawn(sight, face, i)) return [];
      const b = loop[(i + 1) % loop.length] as Vec3;
      // A plate's edge against the sheet is seen from inside only.
      const side = face.outward === null ? 'inside' : null;
      return parted([a, b], (p) => isSeen(sight, faces, p, side)).flatMap(({ ends, seen }) =>
        seen ? [line('thin', ...ends.map(at))] : [],
      );
    }),
  );
  const seams = plan.seams.map((seam) => seamOn(seam, faces, sight, at));
  for (const { strokes } of seams)
    for (const [a, b] of strokes.map(({ ends }) => ends)) labels.coverLine(a, b, 0.5);
  return [
    ...drawn,
    ...seams.flatMap(({ strokes }) => strokes.map(({ ends, seen }) => line(seen ? 'cut' : 'trim', ...ends))),
    ...seams.flatMap(({ seam, tip }) => (tip === null ? [] : numberAt(seam, tip, labels, room))),
    ...partNames(faces, sight, at, labels),
  ];
};

/** Scales and moves the picture into the middle of a room, with a rim for the numbers. */
const fitted = (faces: readonly ViewFace[], { flat }: Sight, { min, max }: PathBox): ((p: Vec3) => Vec2) => {
  const points = faces.flatMap(({ loop }) => loop.map(flat));
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const rim = 12;
  const scale = Math.min((max[0] - min[0] - 2 * rim) / (x1 - x0), (max[1] - min[1] - 2 * rim) / (y1 - y0));
  const [cx, cy] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  return (p) => {
    const [x, y] = flat(p);
    return [cx + scale * (x - (x0 + x1) / 2), cy + scale * (y - (y0 + y1) / 2)];
  };
};

interface DrawnSeam {
  readonly seam: Seam;
  readonly strokes: readonly { readonly ends: readonly [Vec2, Vec2]; readonly seen: boolean }[];
  /** Middle of the longest stretch that is seen, or of any; null for a seam without lines. */
  readonly tip: Vec2 | null;
}

const seamOn = (seam: Seam, faces: readonly ViewFace[], sight: Sight, at: (p: Vec3) => Vec2): DrawnSeam => {
  const stretches = seam.lines.flatMap(({ root }) =>
    root
      .slice(1)
      .flatMap((b, i) => parted([root[i] as Vec3, b], (p) => isSeen(sight, faces, p, seam.side)))
      .map(({ ends: [a, b], seen }) => ({
        ends: [at(a), at(b)] as const,
        middle: scale3(add3(a, b), 0.5),
        long: length3(subtract3(b, a)),
        seen,
      })),
  );
  const best = [...stretches].sort((p, q) => Number(q.seen) - Number(p.seen) || q.long - p.long)[0];
  return { seam, strokes: stretches, tip: best === undefined ? null : at(best.middle) };
};

const numberAt = (seam: Seam, tip: Vec2, labels: LabelRoom, room: PathBox): readonly PageItem[] => {
  const text = `S${seam.number}`;
  const [cx, cy] = [(room.min[0] + room.max[0]) / 2, (room.min[1] + room.max[1]) / 2];
  const out = Math.atan2(tip[1] - cy, tip[0] - cx);
  const wished = [5, 8, 12, 17, 23, 30].flatMap((away) =>
    [0, 0.5, -0.5, 1, -1, 1.6, -1.6, 2.3, -2.3, 3].map((turn): Vec2 => {
      const way = out + turn;
      return [tip[0] + away * Math.cos(way), tip[1] + away * Math.sin(way)];
    }),
  );
  const found = labels.place(
    wished.map(([x, y]) => words([x, y - 1], 2.8, text, { bold: true, align: 'centre' })),
  );
  if (found === null) return [];
  const end: Vec2 = [found.at[0], found.at[1] + 1];
  const away = Math.hypot(end[0] - tip[0], end[1] - tip[1]);
  const stop: Vec2 = [end[0] + ((tip[0] - end[0]) * 2.6) / away, end[1] + ((tip[1] - end[1]) * 2.6) / away];
  labels.coverLine(stop, tip, 0.2);
  return [line('thin', stop, tip), found];
};

/** A face smaller than this carries no name, mm² on paper. */
const LEAST_FACE = 60;

/** Each part's name in the middle of its largest face that is seen. */
const partNames = (
  faces: readonly ViewFace[],
  sight: Sight,
  at: (p: Vec3) => Vec2,
  labels: LabelRoom,
): readonly PageItem[] => {
  const seen = faces.flatMap((face) => {
    const n = face.loop.length;
    const middle = face.loop.reduce<Vec3>(
      (s, p) => [s[0] + p[0] / n, s[1] + p[1] / n, s[2] + p[2] / n],
      [0, 0, 0],
    );
    return isSeen(sight, faces, middle) ? [{ name: face.name, middle, size: sizeOf(face.loop.map(at)) }] : [];
  });
  const names = [...new Set(seen.filter(({ size }) => size > LEAST_FACE).map(({ name }) => name))];
  return names.flatMap((name) => {
    const best = seen.filter((one) => one.name === name).sort((p, q) => q.size - p.size)[0]!;
    const found = labels.place(
      [
        [0, 0] as const,
        ...[3, 6, 10].flatMap(
          (d) =>
            [
              [0, d],
              [0, -d],
              [d, 0],
              [-d, 0],
            ] as const,
        ),
      ].map(([dx, dy]) => {
        const [x, y] = at(best.middle);
        return words([x + dx, y - 0.8 + dy], 2.4, oneLine(name, 40), { align: 'centre' });
      }),
    );
    return found === null ? [] : [found];
  });
};

const sizeOf = (corners: readonly Vec2[]): number =>
  Math.abs(
    corners.reduce((sum, a, i) => {
      const b = corners[(i + 1) % corners.length] as Vec2;
      return sum + (a[0] * b[1] - b[0] * a[1]) / 2;
    }, 0),
  );
