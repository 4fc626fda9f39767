import { findMaterial } from '../../design/index.js';
import { pathBox } from '../../geometry/index.js';
import { airBendForce, foldOrder, openingFor, punchHalf } from '../../sheet/index.js';
import { SAYINGS } from '../../weld/index.js';
import { csv } from '../csv.js';
import { type CutPlan, headLines, type NamedPart } from '../cut-plan.js';
import { nestWords } from '../nest/nest-dxf.js';
import type { NestGroup } from '../nest/nest-group.js';
import { foldWords, massWords, trimmed } from '../part-words.js';

/** What to order cut, file by file. */
export const laserOrder = (plan: CutPlan, nests: readonly NestGroup[]): string =>
  lines([
    ...headLines(plan, 'parts to cut'),
    'Millimetres, 1:1. Cut the layer "through" only; "fold" and "mark" may be engraved; "note" is for people.',
    'The files in bare/ hold the cut loops alone. Arcs are arcs: no smoothing.',
    'Delete nothing inside an outline; the check square and the words stand clear of the part.',
    '',
    ...plan.parts.flatMap(({ part, file }) => [
      `${file}.dxf  ${part.quantity} off  ${part.material} ${trimmed(part.thickness, 2)} mm`,
      `    ${part.flat[0].toFixed(1)} x ${part.flat[1].toFixed(1)} mm, ${(part.cutLength / 1000).toFixed(2)} m of cut, ${massWords(part.mass)} each`,
      ...((part.pilots ?? []).length === 0
        ? []
        : [
            `    Holes that are rings on "mark", to engrave and not to cut: ${part.pilots?.length}; they are drilled after welding.`,
          ]),
    ]),
    '',
    'The same laid out on sheets, in nests/; cut those or the parts one by one, not both.',
    ...nests.flatMap((group) => [
      ...group.sheets.flatMap((laid) => nestWords(group, laid).slice(0, 3)),
      ...group.tooLarge.map(
        ({ part, file }) =>
          `${file} is larger than the sheet of ${group.sheet.length.toFixed(0)} x ${group.sheet.width.toFixed(0)} mm allows (${part.flat[0].toFixed(0)} x ${part.flat[1].toFixed(0)} mm): ${
            part.name === 'strongback'
              ? 'any flat plate as thick serves, or a flat bench drilled alike.'
              : 'buy a larger one and write it as shop.sheet.'
          }`,
      ),
    ]),
    '',
    ...plan.cautions,
  ]);

/** Every fold, part by part, measured from the lower left corner of the blank. */
export const foldList = (plan: CutPlan): string => {
  const folded = plan.parts.filter(({ part }) => part.folds.length > 0);
  return lines([
    ...headLines(plan, 'folds'),
    'Places are x, y in mm from the lower left corner of the blank as drawn, at the middle of the bend.',
    'Bend a test strip of the same sheet first and compare its flat length.',
    ...folded.flatMap((named) => [
      '',
      `${named.file}  (${FACE[named.part.drawnFace]})`,
      ...foldLines(named),
      ...orderLines(plan, named),
      ...forceLines(plan, named),
    ]),
    ...(folded.length === 0 ? ['', 'Nothing is folded.'] : []),
  ]);
};

const FACE = {
  'oil side': 'oil side up: up folds towards the oil',
  outside: 'outside up: up folds away from the oil',
  either: 'either face up',
} as const;

const foldLines = ({ part }: NamedPart): readonly string[] => {
  const [x, y] = pathBox(part.outline).min;
  const at = (p: readonly [number, number]): string => `${(p[0] - x).toFixed(1)}, ${(p[1] - y).toFixed(1)}`;
  return part.folds.map(
    (fold) =>
      `    ${foldWords(fold)}; line from ${at(fold.from)} to ${at(fold.to)}; bend zone ${fold.allowance.toFixed(2)} mm`,
  );
};

const orderLines = ({ design }: CutPlan, { part }: NamedPart): readonly string[] => {
  if (part.folds.length < 2) return [];
  const found = foldOrder(part, punchHalf(design));
  if (found === null)
    return ['    Order: not worked out, a fold does not reach from edge to edge; the smallest legs first.'];
  const names = found.order.map((fold) => fold.name).join(', ');
  return [
    `    Order: ${names}.`,
    ...(found.fouls === null
      ? []
      : [
          `    At ${found.fouls.name} the sheet folded before it meets a straight punch as long as the fold: fold it over a bar or with a cut-away punch.`,
        ]),
    ...(found.complete ? [] : ['    There are more orders than were tried: another one may get further.']),
  ];
};

/** What the longest fold asks of the brake, over the die that was told or one that leaves the bend's radius. */
const forceLines = ({ design }: CutPlan, { part }: NamedPart): readonly string[] => {
  const strength = findMaterial(part.material)?.tensile ?? null;
  if (strength === null || part.folds.length === 0) return [];
  const lengths = part.folds.map((fold) => Math.hypot(fold.to[0] - fold.from[0], fold.to[1] - fold.from[1]));
  const longest = Math.max(...lengths);
  const opening = design.shop.brake.die ?? openingFor(part.folds[0]!.radius);
  const force = airBendForce(strength, part.thickness, opening, longest);
  return [
    `    Force: about ${(force / 1000).toFixed(force < 1e4 ? 1 : 0)} kN (${(force / 9806.65).toFixed(1)} t) for ${longest.toFixed(0)} mm over a V of ${opening.toFixed(0)} mm, strength from memory.`,
  ];
};

/** Every round hole, measured from the lower left corner of its blank. */
export const drillTable = (plan: CutPlan): string =>
  csv([
    ['part', 'hole', 'what', 'when', 'x_mm', 'y_mm', 'diameter_mm', 'ready'],
    ...plan.parts.flatMap(({ part, file }) => {
      const [x, y] = pathBox(part.outline).min;
      const { holes, pilots = [] } = part;
      return [...holes, ...pilots].map((hole, i) => [
        file,
        i + 1,
        hole.what,
        i < holes.length ? 'cut' : 'after welding',
        Number((hole.at[0] - x).toFixed(3)),
        Number((hole.at[1] - y).toFixed(3)),
        Number(hole.diameter.toFixed(3)),
        ready(plan),
      ]);
    }),
    ...tableFoot(plan),
  ]);

/** Last rows of a table: the sentences that every file carries, out of the way of the numbers. */
export const tableFoot = (plan: CutPlan): readonly (readonly string[])[] => [
  [],
  ...(plan.warning === null ? [] : [[plan.warning]]),
  [`${SAYINGS.cut}.`],
];

/** A table's own column for it, so that a row copied elsewhere still says so. */
export const ready = (plan: CutPlan): string => (plan.warning === null ? 'yes' : 'no');

export const lines = (all: readonly string[]): string => `${all.join('\n').trimEnd()}\n`;
