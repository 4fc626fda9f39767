import type { Check, Grounds } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { checkNumbers, stateWord } from './check-numbers.js';
import { ink } from './ink.js';
import { MARGIN } from './job-card.js';

import { plain, started } from './plain.js';
import { sentence } from './quantity.js';
import { markOf } from './sign.js';
import { type Column, row, tableWidth } from './table.js';
import { hang } from './wrap.js';

const STATE: Column = { width: 7 };
const VALUE: Column = { width: 11, right: true };
const MARK = 3;
/** A space that wrapping keeps. */
const HARD = '\u00a0';
const LIMIT: Column = { width: 13, right: true };

const shapeFor = (width: number): readonly Column[] => {
  const fixed = [STATE, { width: 0 }, VALUE, LIMIT];
  return [STATE, { width: Math.max(13, Math.min(46, width - MARGIN - tableWidth(fixed))) }, VALUE, LIMIT];
};

/** The first line of a text, with a sign that there is more of it. */
const oneLine = (lines: readonly string[]): string[] => {
  const [first, second] = lines;
  if (first === undefined) return [];
  return [second === undefined ? first : `${first.replace(/[,;:]$/, '')} …`];
};

const explained = (check: Check, lead: number, width: number, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const text = (words: string): string => started(sentence(plain(words), screen.units));
  const pad = ' '.repeat(lead);
  // What passes asks for nothing: one line says what was looked at, and the JSON has the rest.
  if (check.status === 'pass') return oneLine(hang(pad, text(check.because), width - 2)).map(paint.faint);
  return [
    ...hang(pad, text(check.because), width),
    ...(check.try === '' ? [] : hang(`${pad.slice(2)}> `, text(check.try), width).map(paint.strong)),
  ];
};

const checkRow = (check: Check, shape: readonly Column[], screen: Screen, mark: string): string[] => {
  const [is, plainWants] = checkNumbers(check, screen.units);
  // The sign stands right behind the value, in the free space before what is wanted.
  const wants =
    mark === '' || is === ''
      ? plainWants
      : mark.padEnd(MARK, HARD) + plainWants.padStart(LIMIT.width - MARK, HARD);
  const tone = (text: string): string => ink(screen.colour).status(check.status, text);
  const title = { text: plain(check.title, 120) };
  return row([{ text: stateWord(check.status), tone }, title, { text: is }, { text: wants }], shape);
};

const STORY_INDENT = STATE.width + 2;

/** Reason and remedy below a row, or where they were told already. */
const story = (check: Check, above: string | undefined, screen: Screen): string[] =>
  above === undefined
    ? explained(check, STORY_INDENT, screen.width - MARGIN, screen)
    : [`${' '.repeat(STORY_INDENT)}${ink(screen.colour).faint(`see ${above} above`)}`];

/** Rows that follow each other with the same reason and remedy are told once, below the last of them. */
const sameStory = (a: Check, b: Check | undefined): boolean =>
  b !== undefined && a.status === b.status && a.because === b.because && a.try === b.try;

/** What a table of checks needs besides them: which were told above, and what their values lean on. */
export interface RowsContext {
  readonly told: ReadonlyMap<string, string>;
  readonly grounds: Readonly<Record<string, Grounds>>;
}

/** Checks as a table as wide as the margin leaves; one told in full before is pointed back to by its label. */
export const checkRows = (
  checks: readonly Check[],
  screen: Screen,
  { told, grounds }: RowsContext,
): string[] => {
  if (checks.length === 0) return [];
  const shape = shapeFor(screen.width);
  const head = row([{ text: '' }, { text: '' }, { text: 'is' }, { text: 'wants' }], shape).map(
    ink(screen.colour).faint,
  );
  return [
    ...head,
    ...checks.flatMap((check, i) => {
      const above = told.get(check.id);
      const shared = above === undefined && sameStory(check, checks[i + 1]);
      return [
        ...checkRow(check, shape, screen, markOf(grounds[check.id])),
        ...(shared ? [] : story(check, above, screen)),
      ];
    }),
  ];
};

/** The one check that decides: its numbers, why, and what to change. */
export const decidingCheck = (check: Check, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const [is, wants] = checkNumbers(check, screen.units);
  const figures = [is, wants === '' ? '' : `wants ${wants}`].filter((text) => text !== '').join(', ');
  const title = plain(check.title, 120);
  const lead = `${stateWord(check.status)}  `;
  const [first = '', ...rest] = hang(
    lead,
    figures === '' ? title : `${title}: ${figures}`,
    screen.width - MARGIN,
  );
  return [
    paint.status(check.status, lead) + paint.strong(first.slice(lead.length)),
    ...rest.map(paint.strong),
    ...explained(check, 2, screen.width - MARGIN, screen),
  ];
};
