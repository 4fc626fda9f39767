import { designKeyRows, type KeyRow } from '../design/index.js';
import table from './worksheet-keys.json' with { type: 'json' };

/** One thing to measure: its key as the design file has it, and how it is had. */
export interface WorksheetRow extends KeyRow {
  readonly from: string;
  /** How well it should be known. */
  readonly within: string;
  /** What each box to fill in is for; a choice has a box to tick for each of its words. */
  readonly boxes: readonly string[];
  readonly tick: boolean;
}

/** One part of the worksheet: its notes and the rows to fill in. */
export interface WorksheetPart {
  readonly id: string;
  readonly title: string;
  readonly notes: readonly string[];
  readonly rows: readonly WorksheetRow[];
}

const MOST_LISTED = 6;

/** What is measured, part by part, in the order of the design file; words come from the table of its keys. */
export const worksheetParts = (units: 'mm' | 'in'): readonly WorksheetPart[] => {
  const known = designKeyRows();
  const place = (key: string): number => known.findIndex((row) => row.key === key);
  return table.pages.map(({ id, title, notes, rows }) => ({
    id,
    title,
    notes,
    rows: [...rows]
      .sort((a, b) => place(a.key) - place(b.key))
      .map(({ key, from, within }) => {
        const row = known[place(key)];
        if (row === undefined) throw new Error(`worksheet: ${key} is no key of a design`);
        const same = rows.filter((one) => known[place(one.key)]?.about === row.about).length > 1;
        return { ...row, about: same ? underParent(row) : row.about, from, within, ...boxesOf(row, units) };
      }),
  }));
};

/** Keys that nobody measures, and why, by the beginning of their names. */
export const notMeasured = (): readonly { readonly key: string; readonly why: string }[] =>
  table.not_measured;

/** Two rows of one meaning on a page are told apart by what they belong to. */
const underParent = ({ key, about }: KeyRow): string =>
  `${(key.split('.').at(-2) ?? '').replaceAll('_', ' ')}: ${about}`;

const POINT = ['x', 'y', 'z'];

/** The boxes that a key's form asks for. */
const boxesOf = (
  { takes }: KeyRow,
  units: 'mm' | 'in',
): { readonly boxes: readonly string[]; readonly tick: boolean } => {
  const boxes = (...of: readonly string[]) => ({ boxes: of, tick: false });
  const [first = ''] = takes.split(/, (?=or |at |more |less )/);
  if (takes.includes(' | ')) return { boxes: takes.split(/, or /)[0]!.split(' | '), tick: true };
  if (first === 'list of [hole, x, y]')
    return boxes('hole', ...POINT.slice(0, 2), 'hole', ...POINT.slice(0, 2));
  if (/^list of \[/.test(first)) return boxes();
  if (/^list of length/.test(first))
    return boxes(...Array.from({ length: MOST_LISTED }, (_, i) => String(i + 1)));
  if (first.startsWith('[[x, y, z]')) return boxes(...POINT, ...POINT);
  if (first.startsWith('[')) return boxes(...first.replace(/[[\]]/g, '').split(', '));
  if (first.startsWith('length')) return boxes(units);
  if (first.startsWith('angle per g')) return boxes('deg/g');
  if (first.startsWith('angle')) return boxes('deg');
  if (first.startsWith('volume')) return boxes(units === 'mm' ? 'L' : 'US qt');
  if (first.startsWith('flow')) return boxes('L/min');
  if (first.startsWith('whole')) return boxes('');
  return boxes(first.startsWith('text') ? 'words' : '');
};
