import type { Problem } from '../errors/index.js';

type Keys = Readonly<Record<string, unknown>>;

/** Rewrites the keys of one format as the next. A key that keeps its name keeps its place in error messages. */
export type FormatStep = (keys: Keys) => Keys;

/** The newest format of design files, which new ones are written in. */
export const NEWEST_FORMAT = 1 as const;

/** Steps by the format they start from. There are none yet: format 1 is the first. */
const STEPS: Readonly<Record<number, FormatStep>> = Object.freeze({});

const isKeys = (raw: unknown): raw is Keys => typeof raw === 'object' && raw !== null && !Array.isArray(raw);

/** A design of a format that is newer than the newest known: nothing else in it can be judged. */
export const newerFormat = (raw: unknown, newest: number = NEWEST_FORMAT): Problem | null => {
  const format = isKeys(raw) ? raw.format : undefined;
  if (typeof format !== 'number' || !Number.isInteger(format) || format <= newest) return null;
  return {
    code: 'input-range',
    path: ['format'],
    message: `format is ${format}, which is newer than this version of pan reads.`,
    expected: `at most ${newest}`,
    found: String(format),
    value: format,
    limit: newest,
    advice: 'Read it with the version of pan that wrote it, or a later one.',
  };
};

/** A design of an older format, step by step in the newest one; anything else as it is. */
export const inNewestFormat = (raw: unknown, newest: number = NEWEST_FORMAT, steps = STEPS): unknown => {
  let keys = raw;
  while (isKeys(keys) && typeof keys.format === 'number' && keys.format < newest) {
    const step = Object.hasOwn(steps, keys.format) ? steps[keys.format] : undefined;
    if (step === undefined) return keys;
    keys = { ...step(keys), format: keys.format + 1 };
  }
  return keys;
};
