import type { DistanceSurvey } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { ink } from './ink.js';
import { block, blockText, MARGIN } from './job-card.js';
import { quantity } from './quantity.js';
import { type Column, row } from './table.js';
import { wrap } from './wrap.js';

interface Plan {
  readonly pairs: readonly (readonly [number, number])[];
  readonly least: number;
}

const SHAPE: readonly Column[] = [
  { width: 9 },
  { width: 11, right: true },
  { width: 11, right: true },
  { width: 9, right: true },
];

/** Which distances to take, and how those taken go together; empty where there are none of either. */
export const worksheetScreen = (plan: Plan | null, survey: DistanceSurvey | null, screen: Screen): string => {
  const { heading } = ink(screen.colour);
  const lines = [
    ...(survey === null ? [] : surveyLines(survey, screen)),
    ...(plan === null ? [] : block('MEASURE', planLines(plan, screen.width), heading)),
  ];
  return lines.length === 0 ? '' : `${lines.join('\n').replace(/^\n/, '')}\n`;
};

const planLines = ({ pairs, least }: Plan, width: number): readonly string[] => [
  ...blockText(
    '',
    `${pairs.length} distances, middle to middle; a slip in any shows by at least ${Math.floor(least * 100)} % in its own:`,
    width,
  ),
  ...wrap(pairs.map(([a, b]) => `${a + 1}–${b + 1}`).join(' '), width - MARGIN),
];

const surveyLines = (survey: DistanceSurvey, screen: Screen): readonly string[] => {
  const { heading, status } = ink(screen.colour);
  const red = (text: string): string => status('fail', text);
  const { distances, slips, holes, plusMinus } = survey;
  const worst = Math.max(...holes.map((hole) => hole.plusMinus));
  const first = slips.map(
    ({ holes: [a, b], by }) =>
      `Measure hole ${a} to ${b} again: it reads ${quantity(Math.abs(by), 'mm', screen.units)} too ${by > 0 ? 'long' : 'short'}.`,
  );
  const said =
    slips.length === 0
      ? `${distances.length} distances of ± ${plusMinus} mm go together; holes are within ${worst.toFixed(2)} mm.`
      : first.join(' ');
  const ranked = [...distances].sort((a, b) => Math.abs(b.standardized) - Math.abs(a.standardized));
  const rows = ranked.map(({ holes: [a, b], measured, residual, redundancy }) => {
    const slipped = slips.some((slip) => slip.holes[0] === a && slip.holes[1] === b);
    const tone = slipped ? { tone: red } : {};
    return row(
      [
        { text: `${a}–${b}`, ...tone },
        { text: `${measured.toFixed(2)} mm`, ...tone },
        { text: `${residual < 0 ? '−' : '+'}${Math.abs(residual).toFixed(2)} mm`, ...tone },
        { text: `${Math.round(redundancy * 100)} %` },
      ],
      SHAPE,
    ).join('\n');
  });
  const heads = row([{ text: 'holes' }, { text: 'measured' }, { text: 'off' }, { text: 'watched' }], SHAPE);
  return [
    ...block(
      slips.length === 0 ? 'HOLES' : 'FIRST',
      blockText('', said, screen.width),
      slips.length === 0 ? heading : red,
    ),
    ...block('DISTANCES', [...heads, ...rows], heading),
  ];
};
