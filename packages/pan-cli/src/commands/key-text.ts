import { type Assumption, keyText, type Unknown } from 'pan-core';

/** Assumptions as a program reads them: each place in the file is one text. */
export const keyedAssumed = (assumed: readonly Assumption[]): object[] =>
  assumed.map(({ path, value, why }) => ({ key: keyText(path), value, why }));

/** The same for what is not known. */
export const keyedUnknown = (unknown: readonly Unknown[]): object[] =>
  unknown.map(({ path, what, needed }) => ({ key: keyText(path), what, needed }));
