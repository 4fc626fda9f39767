import { kindWords } from '../units/index.js';
import type { Description } from './field/index.js';
import { designField } from './keys/design-keys.js';

/** One key of a design file, for a table on paper or on a page. */
export interface KeyRow {
  /** From the top of the file; `[]` stands for each entry of a list: `baffles[].doors[].size`. */
  readonly key: string;
  readonly about: string;
  /** What may be written, in words. */
  readonly takes: string;
  readonly required: boolean;
  /** The value taken when it is left out, with its unit; null when none is. */
  readonly assumed: string | null;
  readonly mayBeUnknown: boolean;
}

/** What a design file may hold. */
export const designDescription = (): Description =>
  designField({ units: 'mm', extra: [], onMissingUnit: () => undefined }).about;

/** Every key in the order of the file. */
export const designKeyRows = (): readonly KeyRow[] => Object.freeze(rowsUnder('', designDescription()));

const rowsUnder = (path: string, about: Description): readonly KeyRow[] => {
  switch (about.form) {
    case 'section':
      return Object.entries(about.keys).flatMap(([name, of]) => {
        const key = path === '' ? name : `${path}.${name}`;
        const { required, assumed, mayBeUnknown } = of;
        return [
          { key, about: of.about, takes: takesOf(of), required, assumed, mayBeUnknown },
          ...rowsUnder(key, of),
        ];
      });
    case 'list':
      return rowsUnder(`${path}[]`, about.of);
    case 'either':
      return about.of.flatMap((of) => rowsUnder(path, of));
    default:
      return [];
  }
};

const takesOf = (about: Description): string => {
  switch (about.form) {
    case 'section':
      return 'keys';
    case 'list':
      return about.of.form === 'section' ? 'list of entries' : `list of ${takesOf(about.of)}`;
    case 'tuple':
      return `[${about.of.map((part) => (part.form === 'tuple' ? takesOf(part) : part.about)).join(', ')}]`;
    case 'either':
      return [...new Set(about.of.filter((of) => of.form !== 'text').map(takesOf))].join(', or ');
    case 'quantity':
      return `${kindWords(about.kind).say.replace(/^an? /, '')}${about.range === '' ? '' : `, ${about.range}`}`;
    case 'text':
      return `text, such as ${about.sample}`;
    case 'choice':
      return about.of.join(' | ');
    case 'count':
      return `whole number, ${about.from} to ${about.to}`;
    case 'number':
      return 'number';
    case 'flag':
      return 'true | false';
    case 'map':
      return 'check ids with a limit each';
  }
};
