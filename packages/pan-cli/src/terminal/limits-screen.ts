import type { LimitCase, LimitsReport } from 'pan-core';
import type { Screen } from '../commands/command.js';
import type { Sureness } from '../commands/sureness.js';
import { unknownLines } from './assumptions.js';
import { ink } from './ink.js';
import { block, blockText, MARGIN } from './job-card.js';
import { BESIDE, caseLetter, limitsPlot, plotKey } from './limits-plot.js';
import { sureBlocks } from './marks.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { markOf } from './sign.js';
import { type Column, row } from './table.js';
import { wrap } from './wrap.js';

const MOST_G = 3;

const g = (value: number | null): string => (value === null ? `over ${MOST_G} g` : `${value.toFixed(2)} g`);

const headline = (report: LimitsReport, mark: string): string => {
  const { worst } = report;
  if (worst === null) return `Nothing up to ${MOST_G} g bares the mouth`;
  if (worst.limit_g === 0) return 'The mouth is bared standing still: too little oil in the pan';
  return `${g(worst.limit_g)}${mark} ${worst.load} (${worst.toward_deg.toFixed(0)} deg) bares the mouth first: ${worst.binding}`;
};

const changeLines = (report: LimitsReport, screen: Screen): string[] => {
  const { worst, changes, no_help, lift_g } = report;
  if (worst === null) return [];
  const say = (lead: string, text: string): string[] =>
    blockText(lead, sentence(plain(text), screen.units), screen.width);
  const helpless = no_help.flatMap(({ change, limit_g }) =>
    say('- ', `${change} gives no more than ${g(limit_g)}.`),
  );
  if (changes.length === 0) {
    return [
      ...say(
        '',
        `Nothing tried lifts it by ${lift_g.toFixed(1)} g: more oil up to 25 mm under the rods, a lower mouth, a longer lid, a higher wall. It takes a deeper sump, a wing, or the mouth nearer to where the oil goes.`,
      ),
      ...helpless,
    ];
  }
  return [
    ...changes.flatMap(({ change, limit_g, lasts_s }) =>
      say(
        '> ',
        `${change} lifts it to ${g(limit_g)}${lasts_s === null ? '' : `; at ${g(worst.limit_g)} the pool then lasts ${lasts_s.toFixed(1)} s with no return`}.`,
      ),
    ),
    ...helpless,
  ];
};

const NAME: Column = { width: 24 };
const NUMBER: Column = { width: 10, right: true };
const FILL: Column = { width: 10, right: true };

const shapeFor = ({ width }: Screen): readonly Column[] => {
  const rest = width - MARGIN - 2 * NUMBER.width - FILL.width - 6;
  return [{ width: Math.max(12, Math.min(NAME.width, rest)) }, NUMBER, NUMBER, FILL];
};

const caseLines = (report: LimitsReport, { rests_on }: Sureness, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const shape = shapeFor(screen);
  const head = ['', 'asks', 'limit', 'least oil'].map((text) => ({ text }));
  return [
    ...row(head, shape).map(paint.faint),
    ...report.cases.flatMap((one, i) => [
      ...row(
        [
          { text: `${caseLetter(i)} ${plain(one.name, 60)}` },
          { text: one.toward_deg === null ? 'grade' : g(one.asks_g) },
          { text: one.toward_deg === null ? '' : g(one.limit_g) + markOf(rests_on.limit_g) },
          {
            text:
              one.least_fill_L === null
                ? 'none'
                : quantity(one.least_fill_L, 'L', screen.units) + markOf(rests_on.least_fill_L),
          },
        ],
        shape,
      ).map((text) => (one.covered ? text : paint.status('fail', text))),
      ...blockText('    ', sentence(caseWords(one, screen), screen.units), screen.width).map(paint.faint),
    ]),
  ];
};

const caseWords = (one: LimitCase, { units }: Screen): string => {
  const word = one.covered ? 'Covered.' : 'BARED.';
  if (one.least_fill_L === null) return `${word} No fill to the rail carries it: ${one.least_binding}.`;
  const rods =
    one.under_rods_mm === null
      ? ''
      : one.under_rods_mm < 0
        ? ` That fill stands ${quantity(-one.under_rods_mm, 'mm', units)} into the rods.`
        : one.under_rods_mm < 25
          ? ` That fill stands only ${quantity(one.under_rods_mm, 'mm', units)} under the rods.`
          : '';
  const broken = one.monotone ? '' : ' Less oil covered it too at some fill; that is not relied on.';
  return `${word} With a little less than the least oil: ${one.least_state ?? 'any'}, ${one.least_binding}.${rods}${broken}`;
};

/** The lowest limit and what lifts it, the limits as a picture, and the least oil for every case. */
export const limitsScreen = (report: LimitsReport, sure: Sureness, screen: Screen): string => {
  const paint = ink(screen.colour);
  const lines = [
    ...wrap(headline(report, markOf(sure.rests_on.limit_g)), screen.width).map(paint.strong),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
    ...wrap(
      `${quantity(report.in_pan_L, 'L', screen.units)}${markOf(sure.rests_on.in_pan_L)} in the pan, on a level road.`,
      screen.width,
    ),
    ...block('LIFT IT', changeLines(report, screen), paint.heading),
    ...block(
      'LIMITS',
      [
        ...limitsPlot(report, screen.width - MARGIN - BESIDE),
        '',
        ...blockText('', plotKey(report), screen.width),
      ],
      paint.heading,
    ),
    ...block('CASES', caseLines(report, sure, screen), paint.heading),
    ...block(
      'NOT KNOWN',
      unknownLines(report.unknown).flatMap((text) =>
        blockText('- ', sentence(plain(text), screen.units), screen.width),
      ),
      paint.heading,
    ),
    ...sureBlocks(sure, screen),
    ...block(
      'REMEMBER',
      report.sayings.flatMap((saying) => blockText('', saying, screen.width)),
      paint.heading,
    ),
  ];
  return `${lines.join('\n')}\n`;
};
