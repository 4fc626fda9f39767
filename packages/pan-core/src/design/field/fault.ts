import type { ErrorCode, Problem } from '../../errors/index.js';

export type Place = readonly (string | number)[];

/** A problem whose place is not known yet: fields report one, the design reader adds the place. */
export interface Fault {
  readonly code: ErrorCode;
  /** Completes a sentence that begins with the place: "is 20 mm; it must be at most 12 mm". */
  readonly says?: string;
  /** A whole sentence, where the place makes no good subject. */
  readonly message?: string;
  readonly expected?: string;
  readonly found?: string;
  readonly value?: number;
  readonly limit?: number;
  readonly unit?: string;
  readonly advice?: string;
}

/** `engine.rail.length`, `pan.floor_inside[2][0]`: list positions count from 0 as in most editors' paths. */
export const keyText = (place: Place): string =>
  place.reduce<string>((text, part) => {
    if (typeof part === 'number') return `${text}[${part}]`;
    return text === '' ? part : `${text}.${part}`;
  }, '');

/** The same as the subject of a sentence. */
export const placeText = (place: Place): string => keyText(place) || 'The design';

const LONGEST_FOUND = 40;

/** What was found, short enough for one line. */
export const foundText = (raw: unknown): string => {
  if (raw === undefined) return 'nothing';
  if (raw === null) return 'an empty value';
  if (Array.isArray(raw)) return `a list of ${raw.length}`;
  if (typeof raw === 'object') return 'a group of keys';
  if (typeof raw === 'number') return String(raw);
  const text = JSON.stringify(String(raw)).slice(1, -1);
  return text.length > LONGEST_FOUND ? `${text.slice(0, LONGEST_FOUND)}… (${text.length} characters)` : text;
};

/** A fault with its place, as the rest of the program reports it. */
export const problemOf = ({ says, message, ...rest }: Fault, path: Place): Problem =>
  Object.freeze({
    ...rest,
    path: Object.freeze([...path]),
    message: message ?? `${placeText(path)} ${says}.`,
  });
