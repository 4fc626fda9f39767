import { keyText } from '../design/index.js';
import { type Edit, type KeyPath, valueAt } from './edit.js';

/** A place of the file that reads otherwise. */
export interface Change {
  readonly path: KeyPath;
  readonly key: string;
  readonly before: unknown;
  readonly after: unknown;
}

const isObject = (data: unknown): data is object => typeof data === 'object' && data !== null;

/** Every place where two design files' data differ, as far down as they agree in shape. */
export const changesBetween = (before: unknown, after: unknown, path: KeyPath = []): readonly Change[] => {
  if (Object.is(before, after)) return [];
  const sameShape =
    isObject(before) &&
    isObject(after) &&
    Array.isArray(before) === Array.isArray(after) &&
    (!Array.isArray(before) || !Array.isArray(after) || before.length === after.length);
  if (!sameShape) return [{ path, key: keyText(path), before, after }];
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return keys.flatMap((key) => {
    const step = Array.isArray(before) ? Number(key) : key;
    return changesBetween(valueAt(before, [step]), valueAt(after, [step]), [...path, step]);
  });
};

/** The same as edits, to be made in the file's own text. */
export const editsOf = (changes: readonly Change[]): readonly Edit[] =>
  changes.flatMap(({ path, after }) =>
    typeof after === 'string' || typeof after === 'number' || Array.isArray(after) || isKeys(after)
      ? [{ path, value: after }]
      : [],
  );

const isKeys = (data: unknown): data is Readonly<Record<string, unknown>> => isObject(data);
