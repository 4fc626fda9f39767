import { designKeyRows, type KeyRow } from '../../design/index.js';
import table from './worksheet-keys.json' with { type: 'json' };

/** One thing to measure: its key as the design file has it, and how it is had. */
export interface WorksheetRow extends KeyRow {
  readonly from: string;
  /** How well it should be known. */
  readonly within: string;
  /** What each box to fill in is for; a choice has a box to tick for each of its words. */
  readonly boxes: readonly string[];
  readonly tick: boolean;
  /** What each box of an entry is for, where a list may be written; its entries stand in a table. */
  readonly columns: readonly string[];
  /** It stands on another page too, and is asked there. */
  readonly again: boolean;
  /** Whatever the thing's shape, it is asked for; its boxes stand on one page. */
  readonly each: boolean;
}

/** A list of things with boxes for more of them than the first. */
export interface WorksheetRepeat {
  readonly head: string;
  readonly list: string;
  /** At most so many on the part's own page. */
  readonly times: number;
}

/** One part of the worksheet: its notes and the rows to fill in. */
export interface WorksheetPart {
  readonly id: string;
  readonly title: string;
  readonly notes: readonly string[];
  readonly rows: readonly WorksheetRow[];
  readonly repeats: readonly WorksheetRepeat[];
  /** Title of a page of nothing but further things; null where there is none. */
  readonly continued: string | null;
}

interface TablePage {
  readonly id: string;
  readonly title: string;
  readonly notes: readonly string[];
  readonly rows: readonly TableRow[];
  readonly repeats?: readonly WorksheetRepeat[];
  readonly continued?: string;
}

interface TableRow {
  readonly key: string;
  readonly from: string;
  readonly within: string;
  readonly again?: boolean;
  readonly each?: boolean;
  readonly columns?: readonly string[];
}

const MOST_LISTED = 6;

/** What is measured, part by part, in the order of the design file; words come from the table of its keys. */
export const worksheetParts = (units: 'mm' | 'in'): readonly WorksheetPart[] => {
  const known = designKeyRows();
  const place = (key: string): number => known.findIndex((row) => row.key === key);
  const pages: readonly TablePage[] = table.pages;
  return pages.map(({ id, title, notes, rows, repeats = [], continued = null }) => ({
    id,
    title,
    notes,
    repeats,
    continued,
    rows: [...rows]
      .sort((a, b) => place(a.key) - place(b.key))
      .map(({ key, from, within, again = false, each = false, columns }) => {
        const row = known[place(key)];
        if (row === undefined) throw new Error(`worksheet: ${key} is no key of a design`);
        const same = rows.filter((one) => known[place(one.key)]?.about === row.about).length > 1;
        const about = spoken(same ? underParent(row) : row.about);
        return { ...row, about, from, within, again, each, ...boxesOf(row, units, columns) };
      }),
  }));
};

/** On paper nobody needs the brackets of the file. */
const spoken = (about: string): string =>
  about.replace(/[:,]? (as )?\[+[a-z].*$/, (brackets) => /\]; (.*)$/.exec(brackets)?.[0].slice(1) ?? '');

/** Keys that nobody measures, and why, by the beginning of their names. */
export const notMeasured = (): readonly { readonly key: string; readonly why: string }[] =>
  table.not_measured;

/** Two rows of one meaning on a page are told apart by what they belong to. */
const underParent = ({ key, about }: KeyRow): string =>
  `${(key.split('.').at(-2) ?? '').replaceAll('_', ' ')}: ${about}`;

const POINT = ['x', 'y', 'z'];

type Boxes = Pick<WorksheetRow, 'boxes' | 'tick' | 'columns'>;

/** The boxes that a key's form asks for; where a list or one value may stand, boxes for the value and a table. */
const boxesOf = ({ takes }: KeyRow, units: 'mm' | 'in', named: readonly string[] | undefined): Boxes => {
  const boxes = (...of: readonly string[]): Boxes => ({ boxes: of, tick: false, columns: named ?? [] });
  if (takes.includes(' | ')) return { boxes: takes.split(/, or /)[0]!.split(' | '), tick: true, columns: [] };
  const forms = takes.split(/, or /);
  const first = (forms.find((form) => !form.startsWith('list of [')) ?? takes).split(
    /, (?=at |more |less )/,
  )[0]!;
  if (first === 'list of [hole, x, y]')
    return boxes('hole', ...POINT.slice(0, 2), 'hole', ...POINT.slice(0, 2));
  if (/^list of \[/.test(first))
    return { boxes: [], tick: false, columns: named ?? partsOf(first.slice('list of '.length)) };
  if (/^list of length/.test(first))
    return boxes(...Array.from({ length: MOST_LISTED }, (_, i) => String(i + 1)));
  if (first.startsWith('[')) return boxes(...partsOf(first));
  if (first.startsWith('length')) return boxes(units);
  if (first.startsWith('angle per g')) return boxes('deg/g');
  if (first.startsWith('angle')) return boxes('deg');
  if (first.startsWith('volume')) return boxes(units === 'mm' ? 'L' : 'US qt');
  if (first.startsWith('flow')) return boxes('L/min');
  if (first.startsWith('whole')) return boxes('');
  return boxes(first.startsWith('text') ? 'words' : '');
};

const partsOf = (tuple: string): readonly string[] => tuple.replace(/[[\]]/g, '').split(', ');
