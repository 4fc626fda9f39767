import { SAYINGS, type SurgeCase, type SurgeReport } from 'pan-core';
import type { Screen } from '../commands/command.js';
import type { Sureness } from '../commands/sureness.js';
import { ink } from './ink.js';
import { block, blockText, MARGIN } from './job-card.js';
import { sureBlocks } from './marks.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { markOf } from './sign.js';
import { type Column, row } from './table.js';
import { wrap } from './wrap.js';

const seconds = (value: number | null, none: string): string =>
  value === null ? none : `${value.toFixed(value < 10 ? 2 : 1)} s`;

const sooner = ({ time_to_bare_s, still_time_to_bare_s }: SurgeCase): number | null => {
  const times = [time_to_bare_s, still_time_to_bare_s].filter((t) => t !== null);
  return times.length === 0 ? null : Math.min(...times);
};

const headline = ({ cases, first }: SurgeReport, { units }: Screen): string => {
  const one = first === null ? undefined : cases[first];
  if (one === undefined) return 'There is no manoeuvre to run.';
  const name = plain(one.name, 60);
  const bare = sooner(one);
  if (bare === null) {
    const least = Math.min(one.least_submergence_mm, one.still_least_submergence_mm);
    return `Nothing bares the mouth; ${name} comes nearest, ${quantity(least, 'mm', units)} of oil left over it`;
  }
  const deep = Math.min(one.least_submergence_mm, one.still_least_submergence_mm);
  return `${name} bares the mouth first: after ${seconds(bare, '')}, ${quantity(-deep, 'mm', units)} deep at the worst`;
};

const NAME: Column = { width: 22 };
const NUMBER: Column = { width: 9, right: true };
const shapeFor = (width: number): readonly Column[] => [
  { width: Math.max(10, Math.min(NAME.width, width - MARGIN - 5 * (NUMBER.width + 2))) },
  ...Array.from({ length: 5 }, () => NUMBER),
];

const caseLines = (report: SurgeReport, mark: string, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const shape = shapeFor(screen.width);
  const head = ['', 'bared after', 'without swing', 'least cover', 'bared for', 'covered again after'];
  return [
    ...row(
      head.map((text) => ({ text })),
      shape,
    ).map(paint.faint),
    ...report.cases.flatMap((one) => [
      ...row(
        [
          plain(one.name, 60),
          seconds(one.time_to_bare_s, 'never'),
          seconds(one.still_time_to_bare_s, 'never'),
          quantity(one.least_submergence_mm, 'mm', screen.units),
          one.bared_for_s === 0 ? '' : seconds(one.bared_for_s, ''),
          one.time_to_bare_s === null ? '' : seconds(one.time_to_recover_s, 'not yet'),
        ].map((text, i) => ({ text: i > 0 && /^[-−]?\d/.test(text) ? text + mark : text })),
        shape,
      ).map((line) => (sooner(one) === null ? line : paint.status('fail', line))),
      ...(one.resolved
        ? []
        : blockText(
            '    ',
            `Not resolved: it lasts ${seconds(one.load_s, '')}, less than one period of the oil (${seconds(one.period_s, 'no free surface')}).`,
            screen.width,
          )),
    ]),
  ];
};

const LEAST_L = 0.005;

/** What went through each door, weep, hole and edge in the case that binds. */
const passageLines = ({ cases, first }: SurgeReport, screen: Screen): string[] => {
  const one = first === null ? undefined : cases[first];
  if (one === undefined) return [];
  const lines = one.passages
    .filter(({ forth_L, back_L }) => forth_L + back_L >= LEAST_L)
    .flatMap(({ name, way, forth_L, back_L }) => {
      const forth = `${quantity(forth_L, 'L', screen.units)} ${way}`;
      const back = back_L >= LEAST_L ? `, ${quantity(back_L, 'L', screen.units)} back` : '';
      return blockText('', `${plain(name, 60)}: ${forth}${back}`, screen.width);
    });
  return lines.length === 0
    ? []
    : [...blockText('', `In ${plain(one.name, 60)}, run-out included:`, screen.width), ...lines];
};

/** How long the mouth stays covered in each manoeuvre, what binds first and what is not known. */
export const surgeScreen = (report: SurgeReport, sure: Sureness, screen: Screen): string => {
  const paint = ink(screen.colour);
  const say = (lead: string, text: string): string[] =>
    blockText(lead, sentence(plain(text), screen.units), screen.width);
  const pump =
    report.pump_L_min === null
      ? 'The pump’s flow is not known, so nothing is drawn: times to bare may be too long.'
      : `The pump draws ${report.pump_L_min.toFixed(0)} L/min at the mouth.`;
  const lines = [
    ...wrap(headline(report, screen), screen.width).map(paint.strong),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
    ...wrap(
      `${quantity(report.in_pan_L, 'L', screen.units)}${markOf(sure.rests_on.in_pan_L)} in the pan of the running engine, oil at ${report.viscosity_mm2_s.toFixed(1)} mm²/s. ${pump}`,
      screen.width,
    ),
    ...block('CASES', caseLines(report, markOf(sure.rests_on.surge_s), screen), paint.heading),
    ...block('THROUGH', passageLines(report, screen), paint.heading),
    ...block(
      'NOT IN IT',
      report.not_modelled.flatMap((text) => say('- ', text)),
      paint.heading,
    ),
    ...sureBlocks(sure, screen),
    ...block('REMEMBER', say('', `${SAYINGS.flow}.`), paint.heading),
  ];
  return `${lines.join('\n')}\n`;
};
