import { type CheckReport, keyText, type Status } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { assumptionLines } from './assumptions.js';
import { GROUPS, STATUSES, VERDICT, worstFirst } from './check-order.js';
import { checkRows, decidingCheck } from './check-rows.js';
import { dipRows } from './dip-rows.js';
import { ink } from './ink.js';
import { block, blockText } from './job-card.js';
import { markLines } from './marks.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { markOf } from './sign.js';
import { supplyLines } from './supply-lines.js';
import { columns, wrap } from './wrap.js';

const heading = (report: CheckReport, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const counted = STATUSES.filter((status) => report.counts[status] > 0);
  const words = counted.map((status) => `${report.counts[status]} ${status}`);
  const counts = words.map((word, i) => paint.status(counted[i] as Status, word)).join(' · ');
  const said = VERDICT[report.verdict].toUpperCase();
  const verdict = paint.status(report.verdict, said);
  const fits = columns(`${said}   ${words.join(' · ')}`) <= screen.width;
  return [
    ...(fits ? [`${verdict}   ${counts}`] : [verdict, counts]),
    ...wrap(plain(report.title, 200), screen.width).map(paint.faint),
  ];
};

/** Less than this prints as nothing. */
const LEAST_L = 0.005;

const oilLines = ({ capacity, levels, oil, rests_on }: CheckReport, screen: Screen): string[] => {
  const litres = (value: number): string => quantity(value, 'L', screen.units);
  const sure = (key: string): string => markOf(rests_on[key]);
  const down = (value: number | null, key: string): string =>
    value === null ? 'level not known' : `${quantity(value, 'mm', screen.units)}${sure(key)} below the rail`;
  const lines = [
    `Poured ${litres(oil.poured_L)}.`,
    `Stopped: ${litres(oil.stopped_in_pan_L)}${sure('oil.stopped_in_pan_L')} in the pan, ${down(levels.stopped_mm, 'levels.stopped_mm')}.`,
    `Running: ${litres(oil.running_in_pan_L)}${sure('oil.running_in_pan_L')} in the pan, ${down(levels.running_mm, 'levels.running_mm')}.`,
    `Holds ${litres(capacity.to_rail_L)}${sure('capacity.to_rail_L')} to the rail. With sharp corners and nothing in it ${litres(capacity.sharp_L)}: ` +
      `sump ${litres(capacity.sump_L)}, shallow ${litres(capacity.shallow_L)}.`,
    ...(capacity.never_returns_L >= LEAST_L
      ? [
          `${litres(capacity.never_returns_L)}${sure('capacity.never_returns_L')} never runs back to the mouth.`,
        ]
      : []),
  ];
  return lines.flatMap((line) => blockText('', line, screen.width));
};

/** Said once over all rows of fit, which are all at their worst over it. */
const movementLines = ({ engine_moves }: CheckReport, { width, units }: Screen): string[] =>
  engine_moves === ''
    ? []
    : blockText('', sentence(`Each at its worst while the engine moves: ${engine_moves}.`, units), width);

const legend = ({ rests_on }: CheckReport, screen: Screen): string[] => {
  const lines = markLines(rests_on, screen);
  if (lines.length === 0) return [];
  const wanted = 'What is wanted is common practice, unless limits: in your file says it.';
  return [...lines, ...blockText('   ', wanted, screen.width)];
};

const lists = (report: CheckReport, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const { width, units } = screen;
  const item = (text: string): string[] => blockText('- ', sentence(plain(text), units), width);
  const keyed = (path: readonly (string | number)[], text: string): string[] =>
    item(`${keyText(path)}: ${text}`);
  return [
    ...block('MEASURE AGAIN', report.measureAgain.flatMap(item), paint.heading),
    ...block(
      'NOT KNOWN',
      report.unknown.flatMap(({ path, what, needed }) => keyed(path, `${what}; needed for ${needed}`)),
      paint.heading,
    ),
    ...block('MARKS', legend(report, screen), paint.heading),
    ...block(
      'ASSUMED',
      report.assumed.length === 0
        ? []
        : [
            ...blockText(
              '',
              'Common practice without a source, unless told otherwise. The file can say each.',
              width,
            ),
            ...assumptionLines(report.assumed).flatMap(item),
          ],
      paint.heading,
    ),
    ...block(
      'REMEMBER',
      report.sayings.flatMap((saying) => blockText('', plain(saying), width)),
      paint.heading,
    ),
  ];
};

/** A report as text: verdict, what binds, then every check by group, then what it rests on. */
export const checkScreen = (report: CheckReport, screen: Screen): string => {
  const paint = ink(screen.colour);
  const told = new Map([
    ...(report.first === null ? [] : [[report.first.id, 'FIRST'] as const]),
    ...(report.next === null ? [] : [[report.next.id, 'NEXT'] as const]),
  ]);
  const groups = GROUPS.flatMap((group) => {
    const rows = checkRows(worstFirst(report.checks.filter((check) => check.group === group)), screen, {
      told,
      grounds: report.rests_on,
    });
    const above = { oil: oilLines, fit: movementLines, crank: dipRows };
    const lines = group in above ? [...above[group as keyof typeof above](report, screen), ...rows] : rows;
    return block(group.toUpperCase(), lines, paint.heading);
  });
  const lines = [
    ...heading(report, screen),
    ...(report.first === null ? [] : block('FIRST', decidingCheck(report.first, screen), paint.heading)),
    ...(report.next === null ? [] : block('NEXT', decidingCheck(report.next, screen), paint.heading)),
    ...groups,
    ...(report.supply === null ? [] : block('SUPPLY', supplyLines(report.supply, screen), paint.heading)),
    ...lists(report, screen),
  ];
  return `${lines.join('\n')}\n`;
};
