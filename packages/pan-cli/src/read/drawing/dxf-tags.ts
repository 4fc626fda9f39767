import { drawingRefusal } from './drawing-problem.js';

/** One group of a DXF file: its code, its value as text, and the line the value stands on. */
export interface Tag {
  readonly code: number;
  readonly value: string;
  readonly line: number;
}

const MOST_TAGS = 3_000_000;
const SAVE_AGAIN = 'Save it again as a text (ASCII) DXF of release R12 or 2000 to 2018.';
// Codes whose values are numbers: the DXF reference, table of group code value types.
const isReal = (code: number): boolean =>
  (code >= 10 && code <= 59) || (code >= 110 && code <= 149) || (code >= 210 && code <= 239);
const isWhole = (code: number): boolean => (code >= 60 && code <= 99) || (code >= 170 && code <= 179);
const REAL = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?$/;
const WHOLE = /^[+-]?\d{1,18}$/;
/** No drawing of anything on a bench is larger than this in any unit. */
const LARGEST = 1e9;

/**
 * Every group of a DXF text.
 *
 * @throws PanError `file-read` with the line
 */
export const dxfTags = (text: string): readonly Tag[] => {
  if (text.includes('\0')) throw drawingRefusal('It is binary, not text.', SAVE_AGAIN);
  const lines = text.split(/\r\n|\n|\r/);
  const tags: Tag[] = [];
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const written = (lines[i] as string).trim();
    if (!/^\d{1,4}$/.test(written)) throw drawingRefusal(notACode(written), SAVE_AGAIN, i + 1);
    const tag: Tag = { code: Number(written), value: (lines[i + 1] as string).trim(), line: i + 2 };
    if (tag.code !== 999) tags.push(tag);
    if (tag.code === 0 && tag.value === 'EOF') return tags;
    if (tags.length > MOST_TAGS)
      throw drawingRefusal(
        `It has more than ${MOST_TAGS / 1e6} million groups.`,
        'Keep only the rail in it.',
      );
  }
  throw drawingRefusal(
    'It ends before its EOF: part of it is missing.',
    'Copy or save it again.',
    lines.length,
  );
};

const shown = (text: string): string => JSON.stringify(text.length > 30 ? `${text.slice(0, 30)}…` : text);

const notACode = (written: string): string =>
  written === ''
    ? 'An empty line stands where a group code should.'
    : `${shown(written)} is no DXF group code.`;

/** Refuses a group whose value should be a number that can be drawn and is not. */
export const checkNumber = (tag: Tag): void => {
  const { code, value, line } = tag;
  if (isReal(code)) {
    if (/^[+-]?\d+,\d+/.test(value))
      throw drawingRefusal(`${shown(value)} has a decimal comma.`, 'Save it with decimal points.', line);
    if (!REAL.test(value) || Math.abs(Number(value)) > LARGEST)
      throw drawingRefusal(`${shown(value)} is no number that can be drawn.`, SAVE_AGAIN, line);
  } else if (isWhole(code) && !WHOLE.test(value)) {
    throw drawingRefusal(`${shown(value)} is no whole number.`, SAVE_AGAIN, line);
  }
};
