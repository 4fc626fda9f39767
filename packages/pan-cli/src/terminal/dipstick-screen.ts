import type { DipstickReport, StickRow } from 'pan-core';
import type { Screen } from '../commands/command.js';
import type { Sureness } from '../commands/sureness.js';
import { unknownLines } from './assumptions.js';
import { ink } from './ink.js';
import { block, blockText } from './job-card.js';
import { sureBlocks } from './marks.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { markOf } from './sign.js';
import { type Column, row } from './table.js';
import { wrap } from './wrap.js';

const MARK: Column = { width: 6 };
const NUMBER: Column = { width: 11, right: true };
const SHAPE = [MARK, NUMBER, NUMBER, NUMBER, { width: 16, right: true }];

/** Marks are set with a scriber, so they keep a decimal that other lengths do without. */
const along = (mm: number, { units }: Screen): string =>
  units === 'in' ? quantity(mm, 'mm', units) : `${mm.toFixed(1)} mm`;

const tableRow = (name: string, one: StickRow, mark: string, screen: Screen): string[] =>
  row(
    [
      { text: name },
      { text: along(one.along_mm, screen) + mark },
      { text: `${one.in_pan_L.toFixed(2)} L` },
      { text: `${one.in_pan_US_qt.toFixed(2)} US qt` },
      { text: one.surface_mm === null ? '' : quantity(one.surface_mm, 'mm', screen.units) },
    ],
    SHAPE,
  );

const tableLines = (report: DipstickReport, { rests_on }: Sureness, screen: Screen): string[] => {
  const marked = [
    { name: 'FULL', one: report.full },
    { name: 'ADD', one: report.add },
  ];
  const all = [
    ...marked,
    ...report.table
      .filter((one) => !marked.some((m) => Math.abs(m.one.in_pan_L - one.in_pan_L) < 1e-9))
      .map((one) => ({ name: '', one })),
  ].sort((a, b) => b.one.in_pan_L - a.one.in_pan_L);
  const heads = ['', 'down stick', 'in the pan', '', 'below the rail'].map((text) => ({ text }));
  const paint = ink(screen.colour);
  return [
    ...row(heads, SHAPE).map(paint.faint),
    ...all.flatMap(({ name, one }) =>
      tableRow(name, one, markOf(name === '' ? rests_on.stick_table : rests_on.stick_marks), screen).map(
        (text) => (name === '' ? text : paint.strong(text)),
      ),
    ),
  ];
};

const slopeLines = (report: DipstickReport, screen: Screen): string[] =>
  report.slope_errors.flatMap(({ slope, mark_mm, reads_L }) => {
    const said =
      mark_mm === null || reads_L === null
        ? 'the stick stays dry'
        : Math.abs(mark_mm) < 0.05
          ? 'no difference'
          : `reads ${quantity(Math.abs(reads_L), 'L', screen.units)} too ${reads_L > 0 ? 'much' : 'little'} (${along(Math.abs(mark_mm), screen)} along the stick)`;
    return blockText('', `1 deg ${slope}: ${said}`, screen.width);
  });

/** Where to mark the stick, what a slope does to it, and what every mark stands for. */
export const dipstickScreen = (report: DipstickReport, sure: Sureness, screen: Screen): string => {
  const paint = ink(screen.colour);
  const say = (text: string): string[] => blockText('', sentence(plain(text), screen.units), screen.width);
  const mark = markOf(sure.rests_on.stick_marks);
  const spot = (at: readonly number[]): string =>
    `x ${at[0]?.toFixed(0)}, y ${at[1]?.toFixed(0)}, z ${at[2]?.toFixed(0)} mm`;
  const lines = [
    paint.strong(
      `FULL ${along(report.full.along_mm, screen)}${mark}, ADD ${along(report.add.along_mm, screen)}${mark} down the stick`,
    ),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
    ...wrap(
      sentence(
        `From where its tube enters, at ${spot(report.enters)}; stopped oil, installed tilt.`,
        screen.units,
      ),
      screen.width,
    ),
    ...block('FIRST', say(report.confirm), paint.heading),
    ...block(
      'BAFFLE',
      report.crossings.flatMap(({ baffle, at }) =>
        say(`The stick meets "${baffle}" at ${spot(at)}: it needs a hole there, or the stick another way.`),
      ),
      paint.heading,
    ),
    ...block('TABLE', tableLines(report, sure, screen), paint.heading),
    ...block(
      'SLOPE',
      [...slopeLines(report, screen), ...say('Check it on level ground, the engine stopped.')],
      paint.heading,
    ),
    ...block(
      'STICK',
      blockText(
        '',
        `It ends ${along(report.end_mm, screen)}${markOf(sure.rests_on.stick_end_mm)} down. A litre is ${along(report.per_litre_mm, screen)}${mark} of it at full.`,
        screen.width,
      ),
      paint.heading,
    ),
    ...block(
      'NOT KNOWN',
      unknownLines(report.unknown).flatMap((text) =>
        blockText('- ', sentence(plain(text), screen.units), screen.width),
      ),
      paint.heading,
    ),
    ...sureBlocks(sure, screen),
  ];
  return `${lines.join('\n')}\n`;
};
