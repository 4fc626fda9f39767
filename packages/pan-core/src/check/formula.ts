import table from './formulas.json' with { type: 'json' };

/** How a number comes about, whose formula that is, and what it holds for: null where it has no limit of its own. */
export interface Formula {
  readonly formula: string;
  readonly source: string;
  readonly holds: string | null;
}

interface FormulaRow {
  readonly numbers: string;
  readonly formula: string;
  readonly source: string;
  readonly holds?: string;
}

const rows: readonly FormulaRow[] = table.rows;

/** The formula behind a check's value or a screen's number, by its name. */
export const formulaOf = (name: string): Formula => {
  const row = rows.find(({ numbers }) => name.startsWith(numbers));
  return { formula: row?.formula ?? '', source: row?.source ?? '', holds: row?.holds ?? null };
};
