const WORD = /[^ \t\n]+/g;
const NUMBER_AND_UNIT = /(\d) (?=(?:mm|in|L|US qt|g|deg|s|kg)(?!\w))/g;
const US_QUART = /US qt/g;

/** A number stays on the line of its unit. */
const bound = (text: string): string =>
  text.replace(NUMBER_AND_UNIT, '$1\u00a0').replace(US_QUART, 'US\u00a0qt');

/** Columns a text takes, counting one for every code point. */
export const columns = (text: string): number => [...text].length;

/** Text cut into lines of at most `width` columns at its spaces; a longer word is cut where it must be. */
export const wrap = (text: string, width: number): string[] => {
  const lines: string[] = [];
  let line = '';
  let used = 0;
  const close = (): void => {
    if (line !== '') lines.push(line);
    line = '';
    used = 0;
  };
  for (const [whole] of bound(text).matchAll(WORD)) {
    let word = [...whole];
    if (line !== '' && used + 1 + word.length > width) close();
    while (word.length > width) {
      lines.push(word.slice(0, width).join(''));
      word = word.slice(width);
    }
    if (word.length === 0) continue;
    line = line === '' ? word.join('') : `${line} ${word.join('')}`;
    used += word.length + (used === 0 ? 0 : 1);
  }
  close();
  return lines.map((one) => one.replaceAll('\u00a0', ' '));
};

/** Wrapped lines behind a first-line lead, the rest indented as far. */
export const hang = (lead: string, text: string, width: number): string[] => {
  const indent = columns(lead);
  const lines = wrap(text, Math.max(12, width - indent));
  return lines.map((line, i) => (i === 0 ? lead : ' '.repeat(indent)) + line);
};
