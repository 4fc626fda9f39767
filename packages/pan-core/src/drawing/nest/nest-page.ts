import { circlePath, type PathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { SAYINGS } from '../../weld/index.js';
import type { CutPlan } from '../cut-plan.js';
import { labelRoom } from '../page/label-room.js';
import {
  boxPath,
  line,
  PAPERS,
  type Page,
  type PageItem,
  type PageSet,
  type Paper,
  stroke,
  words,
} from '../page/page.js';
import { scaled, scaleWords } from '../page/scale.js';
import { textBlock } from '../page/table.js';
import { nestWords, placedParts, widestSpan } from './nest-dxf.js';
import type { NamedSheet, NestGroup } from './nest-group.js';
import type { SheetSize } from './sheet-size.js';

const EDGE = 10;
const HEAD = 12;
/** Room at the right for the parts' names, mm. */
const KEY = 56;

/** Every sheet on a page: where each part lies, what is left, which way it was rolled. */
export const nestPages = (plan: CutPlan, nests: readonly NestGroup[], paper: Paper): PageSet => {
  const [height, width] = PAPERS[paper];
  const pages = nests.flatMap((group) =>
    group.sheets.map((laid) => sheetPage(plan, group, laid, width, height)),
  );
  return { title: `${plan.title}: sheets`, pages };
};

const sheetPage = (
  plan: CutPlan,
  group: NestGroup,
  laid: NamedSheet,
  width: number,
  height: number,
): Page => {
  const { sheet } = group;
  const foot = textBlock([...nestWords(group, laid).slice(2), `${SAYINGS.cut}.`], width - 2 * EDGE, 2.6);
  const room: PathBox = {
    min: [EDGE, EDGE + foot.height + 8],
    max: [width - EDGE, height - EDGE - HEAD - (plan.warning === null ? 0 : 6)],
  };
  const [across, up] = laid.used;
  const view: PathBox = { min: room.min, max: [room.max[0] - KEY - 4, room.max[1]] };
  const scale = Math.min((view.max[0] - view.min[0]) / across, (view.max[1] - view.min[1]) / up);
  const at: Vec2 = [view.min[0], view.max[1] - scale * up];
  const put = ([x, y]: Vec2): Vec2 => [at[0] + scale * x, at[1] + scale * y];
  const parts = placedParts(group, laid);
  const labels = labelRoom(room);
  const numbers = laid.places.flatMap((place, i): PageItem[] => {
    const { part } = parts[i] as (typeof parts)[number];
    const [x, y] = put(widestSpan([part.outline, ...part.openings]).at);
    const found = labels.place(
      [0, 3, -3, 6, -6].flatMap((du) =>
        [0, 3, -3].map((dv) =>
          words([x + du, y - 1 + dv], 2.8, String(place.part + 1), { bold: true, align: 'centre' }),
        ),
      ),
    );
    return found === null ? [] : [found];
  });
  const key = room.max[0] - KEY;
  return {
    width,
    height,
    items: [
      words([EDGE, height - EDGE - 5], 5, laid.file, { bold: true, room: width - 2 * EDGE - 62 }),
      words([width - EDGE, height - EDGE - 5], 3, `about ${scaleWords(scale)}: do not measure on the paper`, {
        align: 'right',
      }),
      ...(plan.warning === null
        ? []
        : [words([EDGE, height - EDGE - 11], 3.6, plan.warning, { bold: true, room: width - 2 * EDGE })]),
      line('frame', put([0, up]), put([0, 0]), put([across, 0])),
      line('trim', put([across, 0]), put([across, up]), put([0, up])),
      ...parts.flatMap(({ part }) => [
        ...part.folds.map((fold) => line('fold', put(fold.from), put(fold.to))),
        ...[part.outline, ...part.openings].map((path) => stroke('thin', scaled(path, scale, at))),
        ...part.holes.map((hole) => stroke('thin', circlePath(put(hole.at), (scale * hole.diameter) / 2))),
      ]),
      ...numbers,
      line('thin', [at[0], at[1] - 4], [at[0] + 40, at[1] - 4], [at[0] + 37, at[1] - 3]),
      words([at[0] + 42, at[1] - 5], 2.8, 'rolled this way'),
      ...wholeSheet(sheet, laid, { min: [key, room.max[1] - KEY / 2], max: room.max }),
      ...partKey(group, laid).map((text, i) =>
        words([key, room.max[1] - KEY / 2 - 7 - 3.4 * i], 2.6, text, { room: KEY }),
      ),
      ...foot.draw([EDGE, EDGE + foot.height]),
    ],
  };
};

/** The whole sheet made small, what is used of it shaded. */
const wholeSheet = (
  { length, width }: SheetSize,
  { used }: NamedSheet,
  box: PathBox,
): readonly PageItem[] => {
  const scale = Math.min((box.max[0] - box.min[0]) / length, (box.max[1] - box.min[1]) / width);
  const [x, y] = box.min;
  return [
    {
      kind: 'fill',
      shade: 'pale',
      path: boxPath({ min: box.min, max: [x + scale * used[0], y + scale * used[1]] }),
    },
    stroke('frame', boxPath({ min: box.min, max: [x + scale * length, y + scale * width] })),
    words([x, y - 3.4], 2.6, `whole sheet, ${length.toFixed(0)} × ${width.toFixed(0)} mm`),
  ];
};

/** Numbers of the parts on a sheet, with how many of each. */
const partKey = ({ parts }: NestGroup, { places }: NamedSheet): readonly string[] =>
  parts.flatMap(({ file }, i) => {
    const count = places.filter((place) => place.part === i).length;
    return count === 0 ? [] : [`${i + 1}   ${file}${count === 1 ? '' : `, ${count} off`}`];
  });
