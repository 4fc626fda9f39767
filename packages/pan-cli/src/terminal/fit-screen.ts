import type { FitReport, FitRow, Status } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { assumptionLines, unknownLines } from './assumptions.js';
import { stateWord } from './check-rows.js';
import { ink } from './ink.js';
import { block, blockText, MARGIN } from './job-card.js';
import { plain } from './plain.js';
import { pair, quantity, sentence } from './quantity.js';
import { type Column, row, tableWidth } from './table.js';
import { hang, wrap } from './wrap.js';

const STATE: Column = { width: 7 };
const FIGURE: Column = { width: 8, right: true };
const SMALL: Column = { width: 7, right: true };
const NARROW = 14;

const VERDICT: Readonly<Record<Status, string>> = {
  fail: 'DOES NOT FIT YET',
  unknown: 'MEASURE FIRST',
  warn: 'FITS ON PAPER, WITH WARNINGS',
  pass: 'FITS ON PAPER',
};

const started = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The binding constraint in one line: what, by how much, and what to do. */
const headline = (report: FitReport, screen: Screen): string => {
  const verdict = VERDICT[report.verdict];
  const { first, tightest } = report;
  if (first === null) {
    return tightest === null ? verdict : `${verdict}: ${tightestWords(tightest, screen)}`;
  }
  if (first.worst_mm === null) return `${verdict}: ${plain(first.name, 60)} is not known`;
  const [is, wants] = pair(first.worst_mm, first.allowed_mm, 'mm', screen.units);
  return `${verdict}: ${plain(first.name, 60)} ${is} at its worst, wants ${wants}`;
};

const tightestWords = (tightest: FitRow, { units }: Screen): string => {
  const [is, wants] = pair(tightest.worst_mm ?? 0, tightest.allowed_mm, 'mm', units);
  return `tightest is ${plain(tightest.name, 60)}, ${is} at its worst where ${wants} is wanted`;
};

/** The nearest place on the pan or engine, for a finger. */
const placeWords = (at: readonly [number, number, number], { units }: Screen): string => {
  const mm = (value: number): string => quantity(Math.abs(value), 'mm', units);
  const across =
    Math.abs(at[1]) < 0.5 ? 'on the centre line' : `${mm(at[1])} ${at[1] > 0 ? 'left' : 'right'}`;
  const down =
    Math.abs(at[2]) < 0.5 ? 'at the rail' : `${mm(at[2])} ${at[2] > 0 ? 'above' : 'below'} the rail`;
  return `x ${quantity(at[0], 'mm', units)}, ${across}, ${down}`;
};

const firstLines = (first: FitRow, screen: Screen): string[] => {
  const place = first.worst_at === null ? '' : ` Put a finger on ${placeWords(first.worst_at, screen)}.`;
  return [
    ...blockText('', started(sentence(plain(first.because), screen.units)) + place, screen.width),
    ...(first.try === ''
      ? []
      : blockText('> ', started(sentence(plain(first.try), screen.units)), screen.width).map(
          ink(screen.colour).strong,
        )),
  ];
};

const tableLines = (report: FitReport, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const numbers = [FIGURE, FIGURE, SMALL, SMALL];
  const room = screen.width - MARGIN - tableWidth([STATE, { width: 0 }, ...numbers]);
  const shape: readonly Column[] = [STATE, { width: Math.max(NARROW, Math.min(36, room)) }, ...numbers];
  const head = ['', '', 'at rest', 'worst', '±', 'wants'].map((text) => ({ text }));
  const mm = (value: number | null, decimals: boolean): string =>
    value === null ? 'unknown' : decimals ? tenth(value, screen) : quantity(value, 'mm', screen.units);
  return [
    ...row(head, shape).map(paint.faint),
    ...shown(report.clearances).flatMap((one) => {
      const close = one.worst_mm !== null && Math.abs(one.worst_mm - one.allowed_mm) < 1;
      const tone = (text: string): string => paint.status(one.status, text);
      return [
        ...row(
          [
            { text: stateWord(one.status), tone },
            { text: plain(one.name, 80) },
            { text: mm(one.distance_mm, false) },
            { text: mm(one.worst_mm, close) },
            { text: one.plus_minus_mm === 0 ? '' : mm(one.plus_minus_mm, one.plus_minus_mm % 1 !== 0) },
            { text: mm(one.allowed_mm, close || one.allowed_mm % 1 !== 0) },
          ],
          shape,
        ),
        ...hang('         ', nearestWords(one, screen), screen.width - MARGIN).map(paint.faint),
      ];
    }),
  ];
};

const tenth = (value: number, { units }: Screen): string =>
  units === 'in' ? quantity(value, 'mm', 'in') : `${value.toFixed(1).replace('-', '−')} mm`;

const nearestWords = (one: FitRow, screen: Screen): string =>
  one.worst_at === null
    ? started(sentence(plain(one.because), screen.units))
    : `${plain(one.worst_between[one.kind === 'crank' ? 1 : 0], 60)} at ${placeWords(one.worst_at, screen)}`;

/** Thirty bolts would hide the rest: the tightest stands for all that pass. */
const shown = (rows: readonly FitRow[]): readonly FitRow[] => {
  const bolts = rows.filter((one) => one.kind === 'bolt' && one.status === 'pass');
  const [tightest] = bolts;
  return rows.flatMap((one) => {
    if (one.kind !== 'bolt' || one.status !== 'pass') return [one];
    return one === tightest ? [{ ...one, name: `flange bolts (${bolts.length})` }] : [];
  });
};

/** What binds first with what to do, every clearance, what decides, and what the figures rest on. */
export const fitScreen = (report: FitReport, screen: Screen): string => {
  const paint = ink(screen.colour);
  const say = (text: string): string[] => blockText('', sentence(plain(text), screen.units), screen.width);
  const item = (text: string): string[] => blockText('- ', sentence(plain(text), screen.units), screen.width);
  const { first, engine_moves } = report;
  const lines = [
    ...wrap(headline(report, screen), screen.width).map((text) =>
      report.verdict === 'pass' ? paint.strong(text) : paint.status(report.verdict, text),
    ),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
    ...(first === null ? [] : block('FIRST', firstLines(first, screen), paint.heading)),
    ...block('CLEARANCE', tableLines(report, screen), paint.heading),
    ...block(
      'MOVING',
      [
        ...say(
          engine_moves === ''
            ? 'The engine stands still in this design.'
            : `The engine moves: ${engine_moves}.`,
        ),
        ...say(report.guarantee),
      ],
      paint.heading,
    ),
    ...block(
      'MEASURE',
      report.measure_first.flatMap(({ says }) => item(says)),
      paint.heading,
    ),
    ...block('NOT KNOWN', unknownLines(report.unknown).flatMap(item), paint.heading),
    ...block('ASSUMED', assumptionLines(report.assumed).flatMap(item), paint.heading),
    ...block(
      'REMEMBER',
      report.sayings.flatMap((saying) => say(`${saying}.`)),
      paint.heading,
    ),
  ];
  return `${lines.join('\n')}\n`;
};
