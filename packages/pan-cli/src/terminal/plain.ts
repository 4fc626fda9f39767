/** Control characters, escape codes' first byte included, and the marks that reorder a line. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu;

/**
 * Text from a file made safe to show: one line, no escape codes, no more than `longest` characters.
 * A design file can come from a stranger, and a terminal obeys what it is shown.
 */
export const plain = (text: string, longest = 400): string => {
  // Cutting first keeps a text of a million characters from being searched whole.
  const clean = text
    .slice(0, longest * 4)
    .replace(UNSAFE, ' ')
    .trim();
  const letters = [...clean];
  return letters.length > longest ? `${letters.slice(0, longest - 1).join('')}…` : clean;
};

/** A sentence's first letter as a sentence has it. */
export const started = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
