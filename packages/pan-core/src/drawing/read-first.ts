import { SAYINGS } from '../weld/index.js';
import { type CutPlan, headLines } from './cut-plan.js';
import { lines } from './list/bench-words.js';
import { oneLine } from './one-line.js';

/** What the set holds, in which order to use it, and what was not measured. */
export const readFirst = (plan: CutPlan): string => {
  const { report } = plan;
  const fails = report.checks.filter((c) => c.status === 'fail' || c.status === 'unknown');
  return lines([
    ...headLines(plan, 'read this first'),
    'Every length in these files is in mm, every drawing 1:1.',
    '',
    'Order of work',
    '  1-mock-up  Print the pieces in print/ (pieces.txt says how) or cut the plates, and try them on',
    '             block and car; pan-sheet.stl is the sheet of the whole pan at its own thickness;',
    '             in-place/ holds every piece of the finished pan where it stands;',
    '             templates.pdf is every part at full size on paper, a page map first.',
    '  2-laser    Drawings to cut, one a part, with an order list; bare/ holds cut loops alone,',
    '             nests/ all parts laid out on sheets.',
    '  3-bench    A drawing of each part in drawings/; folds and holes by number.',
    '  4-weld     The pan with its seams by number, seams in order, cautions, leak test.',
    '  5-buy      Sheet, plate and bought parts, and what it costs.',
    '  manifest.json lists every part for programs.',
    '',
    'Before you start',
    ...[
      SAYINGS.geometry,
      SAYINGS.fit,
      SAYINGS.weld,
      SAYINGS.leakTest,
      SAYINGS.assembly,
      SAYINGS.dipstick,
    ].map((s) => `  ${s}.`),
    ...section(
      'Why it is not ready',
      fails.map((c) => `${c.id}: ${c.status}. ${c.because}${c.try === '' ? '' : ` ${c.try}`}`),
    ),
    ...section('Measure these again first', report.measureAgain),
    ...section(
      'Not known',
      report.unknown.map((u) => `${u.path.join('.')}: ${u.what}`),
    ),
    ...section(
      'Assumed, not measured',
      report.assumed.map((a) => `${a.path.join('.')}: ${a.value} (${a.why})`),
    ),
  ]);
};

const section = (head: string, rows: readonly string[]): readonly string[] =>
  rows.length === 0 ? [] : ['', head, ...rows.map((row) => `  - ${oneLine(row, 400)}`)];
