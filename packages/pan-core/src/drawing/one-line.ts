const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}\p{Cn}]+/gu;

/**
 * A user's words as one printable line: no line breaks, control, direction or unassigned characters,
 * at most `most` characters, cut with "..." when longer.
 */
export const oneLine = (text: string, most = 240): string => {
  // Cutting first keeps a text of a million characters from being worked through for nothing.
  const clean = text
    .slice(0, 8 * most)
    .replace(UNPRINTABLE, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
  const characters = [...clean];
  return characters.length <= most ? clean : `${characters.slice(0, most - 3).join('')}...`;
};

/** Splits a sentence at spaces into lines of at most `width` characters; a longer word is cut. */
export const wrapLine = (text: string, width: number): readonly string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((w) => pieces(w, width))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if ([...longer].length > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines;
};

const pieces = (word: string, width: number): string[] => {
  const characters = [...word];
  if (characters.length <= width) return [word];
  const out: string[] = [];
  for (let i = 0; i < characters.length; i += width) out.push(characters.slice(i, i + width).join(''));
  return out;
};
