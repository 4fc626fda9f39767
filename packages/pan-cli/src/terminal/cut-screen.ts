import type { Check, CheckReport, Part } from 'pan-core';
import type { Screen } from '../commands/command.js';
import type { Written } from '../write/index.js';
import { ink } from './ink.js';
import { block, blockText } from './job-card.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { wrap } from './wrap.js';

/** The manifest's rows that the screen tells of. */
export interface SetSummary {
  readonly nests: readonly {
    readonly material: string;
    readonly thickness_mm: number;
    readonly sheet_mm: readonly number[];
    readonly used_mm?: readonly number[];
    readonly too_large?: string;
  }[];
  readonly cost: { readonly make_or_buy: string };
}

/** What `pan cut` wrote, what to do with it first, and the parts. */
export const cutScreen = (
  report: CheckReport,
  parts: readonly Part[],
  open: readonly Check[],
  written: Written,
  set: SetSummary,
  screen: Screen,
): string => {
  const paint = ink(screen.colour);
  const say = (text: string): string[] => blockText('', sentence(plain(text), screen.units), screen.width);
  const mass = parts.reduce((sum, part) => sum + part.quantity * part.mass, 0);
  const lines = [
    open.length === 0
      ? paint.status('pass', 'CUT SET WRITTEN')
      : paint.status('fail', 'CUT SET WRITTEN, NOT READY TO CUT'),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
    ...block('WHERE', say(written.folder), paint.heading),
    ...block(
      'FIRST',
      [
        ...(open.length === 0
          ? []
          : say(`Every part says: NOT READY TO CUT: ${open.map((c) => c.id).join(', ')}`)),
        ...say('Prove a mock-up on block and car first; check the 100 mm square.'),
        ...say('Read 00-read-first.txt; order from 2-laser/order.txt; weld by 4-weld/order.txt.'),
      ],
      paint.heading,
    ),
    ...block(
      'PARTS',
      [
        ...parts.flatMap((part) => say(partLine(part, screen))),
        ...say(`In all ${quantity(mass, 'kg', screen.units)}.`),
      ],
      paint.heading,
    ),
    ...block(
      'SHEET',
      set.nests.flatMap((nest) => say(sheetLine(nest, screen))),
      paint.heading,
    ),
    ...block('COST', say(set.cost.make_or_buy), paint.heading),
    ...(written.keptAt === null
      ? []
      : block(
          'KEPT',
          say(`Files edited or added in the earlier set are now in ${written.keptAt}`),
          paint.heading,
        )),
  ];
  return `${lines.join('\n')}\n`;
};

const partLine = (part: Part, { units }: Screen): string => {
  const size = part.flat.map((side) => quantity(side, 'mm', units)).join(' x ');
  const count = part.quantity === 1 ? '' : `${part.quantity} x `;
  const folds =
    part.folds.length === 0 ? '' : part.folds.length === 1 ? ', 1 fold' : `, ${part.folds.length} folds`;
  return `${count}${part.name}: ${size}, ${quantity(part.thickness, 'mm', units)} ${part.material}${folds}`;
};

const sheetLine = (nest: SetSummary['nests'][number], { units }: Screen): string => {
  const size = (sides: readonly number[]): string =>
    sides.map((side) => quantity(side, 'mm', units)).join(' x ');
  const sheet = `${quantity(nest.thickness_mm, 'mm', units)} ${nest.material}, ${size(nest.sheet_mm)}`;
  return nest.used_mm === undefined
    ? `${nest.too_large ?? 'A part'} is too large for ${sheet}; write a larger one as shop.sheet`
    : `${size(nest.used_mm)} of ${sheet}`;
};

/** Why nothing was written. */
export const stopScreen = (report: CheckReport, open: readonly Check[], screen: Screen): string => {
  const paint = ink(screen.colour);
  const say = (lead: string, text: string): string[] =>
    blockText(lead, sentence(plain(text), screen.units), screen.width);
  const lines = [
    paint.status('fail', 'NOT READY TO CUT: nothing was written'),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
    ...block(
      'BECAUSE',
      open.flatMap((c) => [...say('', `${c.id}: ${c.because}`), ...(c.try === '' ? [] : say('> ', c.try))]),
      paint.heading,
    ),
    ...block(
      'NEXT',
      say(
        '',
        '`pan check` says it all. --despite-fails writes a set for a first look, marked on every part.',
      ),
      paint.heading,
    ),
  ];
  return `${lines.join('\n')}\n`;
};
