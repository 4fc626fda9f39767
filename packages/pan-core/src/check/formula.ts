import table from './formulas.json' with { type: 'json' };

/** How a number comes about, and whose formula that is. */
export interface Formula {
  readonly formula: string;
  readonly source: string;
}

/** The formula behind a check's value or a screen's number, by its name. */
export const formulaOf = (name: string): Formula => {
  const row = table.rows.find(({ numbers }) => name.startsWith(numbers));
  return { formula: row?.formula ?? '', source: row?.source ?? '' };
};
