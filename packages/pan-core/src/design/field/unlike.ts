import { nearestWord } from '../../units/index.js';
import { type Fault, foundText } from './fault.js';
import type { Description } from './field.js';

type About<F extends Description['form']> = Extract<Description, { form: F }>;

/** What is wrong with a value that is not what its key takes. */
export const unlike = (about: Description, raw: unknown): Fault => {
  switch (about.form) {
    case 'section':
      return notA(raw, 'is not a group of keys', groupWords(about));
    case 'list':
      return unlikeList(about, raw);
    case 'tuple':
      return notA(
        raw,
        `is not a list of ${about.of.length}`,
        `[${about.of.map((part) => part.about).join(', ')}]`,
      );
    case 'either':
      return notA(raw, `cannot be ${foundText(raw)}`, about.of.map(formText).join(', or '));
    case 'choice':
      return unlikeChoice(about, raw);
    case 'text':
      return unlikeText(about, raw);
    case 'count':
      return unlikeNumber(raw, about.from, about.to, true);
    case 'number':
      return unlikeNumber(raw, 0, MOST_NUMBER, false);
    case 'flag':
      return missingOr(raw, 'is neither true nor false', 'true or false');
    case 'quantity':
    case 'map':
      return missingOr(raw, 'cannot be read', about.about);
  }
};

/** The most a number without a unit may be. */
export const MOST_NUMBER = 1e9;

export const unknownKey = (key: string, names: readonly string[]): Fault => ({
  code: 'input-key',
  says: 'is not a key that is known here',
  expected: nearestWord(key, names) ?? `one of: ${names.join(', ')}`,
  found: foundText(key),
  ...meant(key, names),
});

const meant = (word: string, words: readonly string[]): Pick<Fault, 'advice'> => {
  const near = nearestWord(word, words);
  return near === null ? {} : { advice: `Did you mean ${near}?` };
};

const missingOr = (raw: unknown, says: string, expected: string): Fault =>
  raw === undefined
    ? { code: 'input-missing', says: 'is missing', expected, found: 'nothing' }
    : { code: 'input-type', says, expected, found: foundText(raw) };

const notA = (raw: unknown, says: string, expected: string): Fault =>
  raw === null
    ? { code: 'input-missing', says: 'is empty', expected, found: 'nothing' }
    : missingOr(raw, says, expected);

const groupWords = ({ keys }: About<'section'>): string => {
  const names = Object.keys(keys);
  return `a group of keys: ${names.slice(0, 8).join(', ')}${names.length > 8 ? ', …' : ''}`;
};

const formText = (about: Description): string => {
  if (about.form === 'section') return `a group of keys: ${Object.keys(about.keys).join(', ')}`;
  if (about.form === 'list' || about.form === 'tuple') return `a list: ${about.about}`;
  return about.about;
};

const unlikeList = ({ fewest, most, of }: About<'list'>, raw: unknown): Fault => {
  const expected = `a list of ${fewest} to ${most}: ${of.about}`;
  if (!Array.isArray(raw)) return notA(raw, 'is not a list', expected);
  return {
    code: 'input-size',
    says: `has ${raw.length} entries; it must have ${fewest} to ${most}`,
    expected,
    found: foundText(raw),
    value: raw.length,
    limit: raw.length < fewest ? fewest : most,
    unit: 'entries',
  };
};

const unlikeChoice = ({ of }: About<'choice'>, raw: unknown): Fault => {
  const expected = of.length === 1 ? String(of[0]) : `one of: ${of.join(', ')}`;
  const advice = typeof raw === 'string' ? meant(raw, of.map(String)) : {};
  return { ...missingOr(raw, `cannot be ${foundText(raw)}`, expected), ...advice };
};

const unlikeText = ({ longest, sample }: About<'text'>, raw: unknown): Fault => {
  const expected = `a text of at most ${longest} characters, such as ${sample}`;
  if (typeof raw !== 'string' && typeof raw !== 'number') return missingOr(raw, 'is not a text', expected);
  const { length } = String(raw).trim();
  if (length === 0) return { code: 'input-missing', says: 'is empty', expected, found: 'nothing' };
  const found = foundText(raw);
  if (length > longest) {
    const says = `is ${length} characters long; it may have ${longest}`;
    return { code: 'input-size', says, expected, found, value: length, limit: longest, unit: 'characters' };
  }
  const says = 'has a line break or an invisible character';
  return { code: 'input-type', says, expected, found, advice: 'Keep it on one line of plain text.' };
};

const unlikeNumber = (raw: unknown, from: number, to: number, whole: boolean): Fault => {
  const expected = `${whole ? 'a whole number' : 'a number'} from ${from} to ${to}, without a unit`;
  if (typeof raw !== 'number' || !Number.isFinite(raw) || (whole && !Number.isInteger(raw))) {
    return missingOr(raw, whole ? 'is not a whole number' : 'is not a number', expected);
  }
  return {
    code: 'input-range',
    says: `is ${raw}; it must be from ${from} to ${to}`,
    expected,
    found: foundText(raw),
    value: raw,
    limit: raw < from ? from : to,
  };
};
