import { type Relief, type SizeReport, titleIn, type Worth } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { ink } from './ink.js';
import { block, blockText } from './job-card.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { fine } from './size-figure.js';
import { type Column, row } from './table.js';
import { wrap } from './wrap.js';

const headline = (report: SizeReport, screen: Screen): string => {
  if (report.layouts.length > 0) {
    const chosen = report.layouts.filter(({ holds }) => holds);
    return chosen.length === 0
      ? 'NO LAYOUT HOLDS: none of the baffles tried holds every case for its time'
      : `HOLDS WITH ${chosen[0]?.words.toUpperCase()}`;
  }
  if (report.passes && report.changes.length === 0) return 'PASSES AS IT STANDS: nothing needs to change';
  if (report.passes) {
    const figure = report.figure === null ? '' : `: ${fine(report.figure, report.unit, screen)}`;
    return `PASSES, ${report.goal.toUpperCase()}${report.goal === 'least change' ? '' : figure}`;
  }
  if (report.stopped && report.conflict.length === 0)
    return `NOTHING PASSES SO FAR among the ${report.tried} designs tried`;
  if (report.conflict.length === 0) return 'NOTHING PASSES in these ranges';
  const names = report.conflict.map((id) => titleIn(report, id));
  return `CANNOT ALL HOLD: ${names.join(' and ')}`;
};

const stoppedWords = ({ passes, tried, layouts, trade }: SizeReport): string => {
  if (layouts.length > 0) return `Stopped: the layouts below were tried, others were not.`;
  if (trade.length > 0) return 'Stopped: the trade is not complete.';
  return passes
    ? `Stopped after ${tried} designs: the best so far, and longer may find better.`
    : `Stopped after ${tried} designs: the nearest so far. Let it run longer, or free more values.`;
};

const reliefText = (report: SizeReport, { kind, what, to, from, unit }: Relief, screen: Screen): string => {
  switch (kind) {
    case 'g':
      return `${(100 * to).toFixed(0)} % of every case's g holds`;
    case 'limit':
      return `${titleIn(report, what)}: ${fine(to, unit, screen)} holds, in place of ${fine(from, unit, screen)}`;
    case 'value':
      return `${what} ${fine(to, unit, screen)} holds, in place of ${fine(from, unit, screen)}`;
  }
};

const worthText = (report: SizeReport, { what, kind, amount, unit, gain }: Worth, screen: Screen): string => {
  const little = fine(amount, unit, screen);
  const name = kind === 'limit' ? titleIn(report, what) : `the range of ${what}`;
  return `${little} more given by ${name} is worth ${gain.toFixed(2)} ${report.unit}`;
};

const VALUE: readonly Column[] = [{ width: 22 }, { width: 10, right: true }, { width: 10, right: true }];

const valueLines = (report: SizeReport, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  return report.chosen.flatMap(({ what, unit, before, after, from, to, range_assumed, at_end }) => {
    const ends = `${fine(from, unit, screen)} to ${fine(to, unit, screen)}`;
    const note = [range_assumed ? `range assumed, ${ends}` : '', at_end ? 'at the end of its range' : '']
      .filter((one) => one !== '')
      .join('; ');
    return [
      ...row(
        [
          { text: plain(what, 60) },
          { text: fine(before, unit, screen) },
          { text: fine(after, unit, screen) },
        ],
        VALUE,
      ),
      ...(note === '' ? [] : blockText('    ', note, screen.width).map(paint.faint)),
    ];
  });
};

const TRADE: readonly Column[] = [
  { width: 26 },
  { width: 9, right: true },
  { width: 8, right: true },
  { width: 8, right: true },
  { width: 8, right: true },
];

const tradeLines = ({ trade }: SizeReport, screen: Screen): string[] =>
  trade.length === 0
    ? []
    : [
        ...row(
          ['made for', 'depth', 'g', 'metal', 'oil'].map((text) => ({ text })),
          TRADE,
        ).map(ink(screen.colour).faint),
        ...trade.flatMap(({ sought, depth_mm, g_factor, metal_kg, fill_L }) =>
          row(
            [
              { text: sought },
              { text: fine(depth_mm, 'mm', screen) },
              { text: `${g_factor.toFixed(2)} ×` },
              { text: quantity(metal_kg, 'kg', screen.units) },
              { text: quantity(fill_L, 'L', screen.units) },
            ],
            TRADE,
          ),
        ),
      ];

const shown = (value: unknown): string =>
  value === undefined ? 'nothing' : typeof value === 'object' ? JSON.stringify(value) : String(value);

/** The answer first, then the values, what binds, what a little more is worth, and what changes in the file. */
export const sizeScreen = (report: SizeReport, screen: Screen): string => {
  const paint = ink(screen.colour);
  const say = (texts: readonly string[], lead = '- '): string[] =>
    texts.flatMap((text) => blockText(lead, sentence(plain(text), screen.units), screen.width));
  const named = (ids: readonly string[]): string[] => ids.map((id) => titleIn(report, id));
  const unknown = report.check?.counts.unknown ?? 0;
  const lines = [
    ...wrap(headline(report, screen), screen.width).map(paint.strong),
    ...(report.stopped ? wrap(stoppedWords(report), screen.width) : []),
    ...(unknown > 0
      ? wrap(
          `${unknown} thing${unknown === 1 ? '' : 's'} must still be measured: \`pan check\` names them.`,
          screen.width,
        )
      : []),
    ...block(
      'GIVE WAY',
      say(
        report.reliefs.map((one) => reliefText(report, one, screen)),
        '> ',
      ),
      paint.heading,
    ),
    ...block(
      'TRIED',
      say(
        report.layouts.map(({ words, holds, missed }) =>
          holds
            ? `${words}: holds`
            : `${words}: ${missed.length === 0 ? 'cannot be built' : `misses ${named(missed).slice(0, 3).join(', ')}`}`,
        ),
      ),
      paint.heading,
    ),
    ...block('VALUES', valueLines(report, screen), paint.heading),
    ...block(
      'BINDS',
      say(report.binds.length > 0 ? named(report.binds) : report.passes ? ['Nothing but the ranges.'] : []),
      paint.heading,
    ),
    ...block(
      'WORTH',
      say(report.worth.slice(0, 8).map((one) => worthText(report, one, screen))),
      paint.heading,
    ),
    ...block('TRADE', tradeLines(report, screen), paint.heading),
    ...block(
      report.passes ? 'CHANGES' : 'NEAREST',
      report.changes.flatMap(({ key, before, after }) =>
        blockText('- ', plain(`${key}: ${shown(before)} to ${shown(after)}`, 300), screen.width),
      ),
      paint.heading,
    ),
    ...block(
      'REMEMBER',
      [
        report.passes
          ? 'The best that was found, not proved best. Run `pan check` on the written file before anything is cut.'
          : 'The values shown come nearest, and do not pass: nothing is written. That nothing passes was not proved either; wider ranges or another --seed may still find a way.',
        ...(report.goal === 'cheapest'
          ? [
              'Cheapest by every price that is given, sheet by the weight of the parts alone; `pan cut` lays them out and adds the offcuts.',
            ]
          : []),
        ...(report.check?.sayings ?? []),
      ].flatMap((text) => blockText('', text, screen.width)),
      paint.heading,
    ),
  ];
  return `${lines.join('\n')}\n`;
};
