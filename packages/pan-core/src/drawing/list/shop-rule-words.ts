import { csv } from '../csv.js';
import type { CutPlan } from '../cut-plan.js';
import { ownRules } from '../dxf/drawn-entities.js';
import { cutLoops } from '../dxf/dxf-part.js';
import type { ShopRule, ShopRuleId } from '../dxf/shop-rule.js';
import { nestCuts } from '../nest/nest-dxf.js';
import type { NestGroup } from '../nest/nest-group.js';
import { ready, tableFoot } from './bench-words.js';

const RULES: readonly ShopRuleId[] = [
  'units',
  'closed',
  'stray',
  'duplicate',
  'crossing',
  'hole',
  'gap',
  'text',
  'spline',
];

/** The rules that every drawing of the set was held against before it was written, a row a drawing. */
export const rulesTable = (plan: CutPlan, nests: readonly NestGroup[]): string => {
  const parts = plan.parts.map(({ part, file }) =>
    row(plan, `2-laser/${file}.dxf`, ownRules(cutLoops(part), part.thickness)),
  );
  const sheets = nests.flatMap((group) =>
    group.sheets.map((laid) =>
      row(plan, `2-laser/nests/${laid.file}.dxf`, ownRules(nestCuts(group, laid), group.thickness)),
    ),
  );
  return csv([
    ['drawing', ...RULES, 'loops', 'smallest_hole_mm', 'smallest_gap_mm', 'told', 'ready'],
    ...parts,
    ...sheets,
    ...tableFoot(plan),
  ]);
};

const row = (plan: CutPlan, file: string, rules: readonly ShopRule[]): readonly (string | number)[] => {
  const of = (id: ShopRuleId): ShopRule | undefined => rules.find((rule) => rule.id === id);
  return [
    file,
    ...RULES.map((id) => of(id)?.status ?? 'unknown'),
    of('closed')?.value ?? '',
    of('hole')?.value ?? '',
    of('gap')?.value ?? '',
    rules
      .filter((rule) => rule.status !== 'pass')
      .map((rule) => `${rule.title}: ${rule.because}`)
      .join(' '),
    ready(plan),
  ];
};
