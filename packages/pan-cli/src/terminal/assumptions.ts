import { type Assumption, keyText, type Unknown } from 'pan-core';

const USUAL = /^common practice, no source:? ?/;

/** One line for each assumption; keys that were given the same value for the same reason share one. */
export const assumptionLines = (assumed: readonly Assumption[]): string[] => {
  const groups = new Map<string, { readonly keys: string[]; readonly text: string }>();
  for (const { path, value, why } of assumed) {
    const reason = why.replace(USUAL, '');
    const text = reason === '' ? value : `${value} (${reason})`;
    const last = path.filter((part) => typeof part === 'string').at(-1) ?? '';
    const same = groups.get(`${last}\n${text}`);
    if (same === undefined) groups.set(`${last}\n${text}`, { keys: [keyText(path)], text });
    else same.keys.push(keyText(path));
  }
  return [...groups.values()].map(({ keys, text }) => `${keys.join(', ')}: ${text}`);
};

/** One line for each value that the file does not give and that matters here. */
export const unknownLines = (unknown: readonly Unknown[]): string[] =>
  unknown.map(({ path, what, needed }) => `${keyText(path)}: ${what}; needed for ${needed}`);
