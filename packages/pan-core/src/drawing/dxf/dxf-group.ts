import { PanError } from '../../errors/index.js';
import { oneLine } from '../one-line.js';

/** One group of a DXF file: its code and its value, already printable. */
export type Group = readonly [code: number, value: string];

// Past this no sheet-metal part is meant, and readers begin to lose decimals.
const LARGEST = 1e6;

/**
 * The one gate for lengths, angles and bulges: finite, rounded, never "-0" or an exponent.
 *
 * @throws PanError `internal` for a number that no drawing can hold.
 */
export const real = (code: number, value: number, decimals = 9): Group => {
  if (!Number.isFinite(value) || Math.abs(value) > LARGEST) {
    throw new PanError({
      code: 'internal',
      path: [],
      message: `A drawing was given the number ${value}, which no drawing can hold.`,
      advice: 'Please report this with the design file that caused it.',
    });
  }
  const text = value.toFixed(decimals).replace(/0+$/, '');
  const full = text.endsWith('.') ? `${text}0` : text;
  return [code, full === '-0.0' ? '0.0' : full];
};

export const whole = (code: number, value: number): Group => [code, String(Math.trunc(value))];

/** A name or handle of our own making: kept as it is, and refused if it could break the file. */
export const token = (code: number, value: string): Group => {
  if (!/^[\x20-\x7e]*$/.test(value)) {
    throw new PanError({ code: 'internal', path: [], message: 'A drawing was given a name it cannot hold.' });
  }
  return [code, value];
};

/**
 * The one gate for words. One line; diameter, degree and plus-minus signs as the format's own codes
 * (`%%c`, `%%d`, `%%p`), any other character outside ASCII as `\U+XXXX`, and a typed caret, backslash or
 * pair of percent signs spelled so that it starts no code.
 */
export const words = (code: number, value: string): Group => {
  // Two percent signs start a code, so a typed one never stands before another or before a code.
  const parted = oneLine(value).replace(/%(?=[%Ø⌀°±])/gu, '% ');
  const out = [...parted].map((character) => {
    const point = character.codePointAt(0) ?? 0xfffd;
    const special = SPECIAL.get(character);
    if (special !== undefined) return special;
    if (point < 0x80) return character;
    return `\\U+${(point > 0xffff ? 0xfffd : point).toString(16).toUpperCase().padStart(4, '0')}`;
  });
  return [code, out.join('')];
};

const SPECIAL: ReadonlyMap<string, string> = new Map([
  ['Ø', '%%c'],
  ['⌀', '%%c'],
  ['°', '%%d'],
  ['±', '%%p'],
  ['’', "'"],
  ['–', '-'],
  ['^', '^ '],
  ['\\', '\\U+005C'],
]);

/** Groups as file text, a line for the code and a line for the value. */
export const groupText = (groups: readonly Group[]): string =>
  groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
