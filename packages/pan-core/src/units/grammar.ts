/** A number and the unit text behind it, '' when there is none. */
export interface Written {
  readonly value: number;
  readonly unit: string;
}

/** Why a text is no quantity: one plain sentence without its place, and what to write. */
export interface NotWritten {
  readonly reason: string;
  readonly advice: string;
}

const LONGEST = 80;
const PLAIN = 'Write a number and a unit, such as 140 mm or 5 1/2 in.';

// sign, then whole and fraction | fraction | decimal with exponent, then the rest as unit text
const NUMBER =
  /^([+-]?)(?:(\d+)\s+(\d+)\/(\d+)|(\d+)\/(\d+)|((?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?))(?![\d./])\s*(.*)$/;
const UNIT = /^[A-Za-zµ°%"'″′][A-Za-z0-9µ°%"'″′^²³/ ]*$/;

/**
 * Reads `140`, `140 mm`, `1/2 in`, `5 1/2 in`, `5.5"`, `-3 deg`. Nothing is calculated beyond the fraction:
 * no operators, no names, no brackets.
 */
export const readWritten = (text: string): Written | NotWritten => {
  const trimmed = text.trim();
  const doubt = knownMistake(trimmed);
  if (doubt !== null) return doubt;
  const match = NUMBER.exec(trimmed);
  if (match === null) return { reason: 'is not a number with a unit', advice: PLAIN };
  const [, sign, whole, top, bottom, loneTop, loneBottom, decimal, unitText = ''] = match;
  const size =
    decimal !== undefined
      ? Number(decimal)
      : fraction(Number(whole ?? 0), Number(top ?? loneTop), Number(bottom ?? loneBottom));
  if (!Number.isFinite(size)) {
    return { reason: 'is not a finite number', advice: 'Write the number out in figures.' };
  }
  if (unitText !== '' && !UNIT.test(unitText))
    return { reason: 'is not a number with a unit', advice: PLAIN };
  return { value: sign === '-' ? -size : size, unit: unitText.replace(/ +/g, ' ') };
};

const fraction = (whole: number, top: number, bottom: number): number => (whole * bottom + top) / bottom;

const knownMistake = (text: string): NotWritten | null => {
  if (text === '') return { reason: 'is empty', advice: PLAIN };
  if (text.length > LONGEST) {
    return { reason: `is ${text.length} characters long; a quantity has at most ${LONGEST}`, advice: PLAIN };
  }
  const hyphen = /^[+-]?(\d+)\s*-\s*(\d+)\s*\/\s*(\d+)\s*(.*)$/.exec(text);
  if (hyphen !== null) {
    const [, whole, top, bottom, unit = ''] = hyphen;
    return {
      reason: 'could be a fraction or a subtraction',
      advice: `Write ${`${whole} ${top}/${bottom} ${unit}`.trim()}, with a space.`,
    };
  }
  if (/\d,\d/.test(text)) {
    return {
      reason: 'has a comma in the number',
      advice: `Write the decimal point as a point and no separator between thousands: ${text.replace(',', '.')}.`,
    };
  }
  if (/[¼-¾⅐-⅞]/.test(text)) {
    return { reason: 'has a fraction in one character', advice: 'Write it as 1/2, as in 5 1/2 in.' };
  }
  if (/^[+-]?\.?(nan|inf|infinity)\b/i.test(text)) {
    return { reason: 'is not a finite number', advice: 'Write the number out in figures.' };
  }
  if (text.startsWith('−')) {
    return { reason: 'has a typographic minus', advice: 'Write the minus as a plain hyphen: -3 deg.' };
  }
  if (/^[+-]?\d+(\.\d+)?\s*(ft|feet|foot|'|′)\s*\d/.test(text)) {
    return { reason: 'has two units', advice: 'Write it in one unit, such as 66 1/2 in.' };
  }
  return null;
};
