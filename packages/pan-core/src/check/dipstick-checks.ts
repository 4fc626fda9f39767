import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { type DipstickAnswer, dipstickAnswer, type OilSystem, type StickCrossing } from '../oil/index.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';

/** Common practice, no source: mm between the marks, mm of stick below add, L for a degree of slope. */
const APART = 6;
const BELOW_ADD = 10;
const PER_DEGREE = 0.3;

/** Whether the dipstick can be read; nothing to say where the design has none. */
export const dipstickChecks = (design: Design, system: OilSystem): readonly Check[] => {
  if (design.dipstick === null) return [];
  try {
    return readable(design, dipstickAnswer(system));
  } catch (error) {
    if (!(error instanceof PanError)) throw error;
    return error.problems.map(
      (p): Check => ({
        id: 'dipstick',
        group: 'oil',
        title: 'dipstick',
        status: 'fail',
        value: null,
        limit: null,
        unit: '',
        because: p.message,
        try: p.advice ?? '',
        margin: -1,
      }),
    );
  }
};

const readable = ({ limits }: Design, found: DipstickAnswer): readonly Check[] => {
  const { full, add, tip, slopes, crossings } = found;
  const worst = slopes.reduce((a, b) => (Math.abs(b.volume ?? 0) > Math.abs(a.volume ?? 0) ? b : a));
  return [
    ...crossings.map(crossing),
    judge({
      id: 'dipstick_apart',
      group: 'oil',
      title: 'full and add marks apart',
      unit: 'mm',
      value: add.along - full.along,
      limit: limitFor(limits, ['dipstick_apart'], APART),
      wants: 'at least',
      miss: 'warn',
      because: 'Along the stick, stopped oil, installed tilt.',
      fix: 'Lead the stick in steeper: fewer mm for a litre cannot be told apart on a wet stick.',
    }),
    judge({
      id: 'dipstick_reach',
      group: 'oil',
      title: 'stick below the add mark',
      unit: 'mm',
      value: tip - add.along,
      limit: limitFor(limits, ['dipstick_reach'], BELOW_ADD),
      wants: 'at least',
      miss: 'warn',
      because: 'From the add mark to the stick’s end, which stops short of the sheet.',
      fix: 'Lead the stick deeper into the sump.',
    }),
    judge({
      id: 'dipstick_slope',
      group: 'oil',
      title: 'dipstick error for 1 deg of slope',
      unit: 'L',
      value: Math.abs(worst.volume ?? 0) / 1e6,
      limit: limitFor(limits, ['dipstick_slope'], PER_DEGREE),
      wants: 'at most',
      miss: 'warn',
      because: `Worst with the ${worst.slope}; nearer the middle of the oil’s surface it would be less.`,
      fix: 'Lead the stick to the middle of the sump, or check it on level ground only.',
    }),
  ];
};

const crossing = ({ baffle, at }: StickCrossing): Check => ({
  id: 'dipstick_baffle',
  group: 'oil',
  title: `dipstick through ${baffle}`,
  status: 'warn',
  value: null,
  limit: null,
  unit: '',
  because: `The stick meets "${baffle}" at x ${at[0].toFixed(0)}, y ${at[1].toFixed(0)}, z ${at[2].toFixed(0)} mm, where it has no hole.`,
  try: 'Give the baffle a hole there, a little larger than the stick, or lead the stick past it.',
  margin: -0.5,
});
