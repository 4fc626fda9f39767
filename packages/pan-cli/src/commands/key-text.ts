import type { Assumption, Unknown } from 'pan-core';

/** Keys from the top of the file the way a reader would write them: `pan.floor_inside[2]`. */
export const keyText = (path: readonly (string | number)[]): string =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? part : `${text}.${part}`),
    '',
  );

/** Assumptions as a program reads them: each place in the file is one text. */
export const keyedAssumed = (assumed: readonly Assumption[]): object[] =>
  assumed.map(({ path, value, why }) => ({ key: keyText(path), value, why }));

/** The same for what is not known. */
export const keyedUnknown = (unknown: readonly Unknown[]): object[] =>
  unknown.map(({ path, what, needed }) => ({ key: keyText(path), what, needed }));
