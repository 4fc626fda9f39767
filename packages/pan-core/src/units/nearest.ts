/** Fewest single-character insertions, deletions and replacements from `a` to `b` (Levenshtein 1966). */
export const editDistance = (a: string, b: string): number => {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[j] as number) + 1, (next[j - 1] as number) + 1));
    }
    row = next;
  }
  return row[b.length] as number;
};

const LONGEST = 60;

/** The known word nearest to what was written, or null when none is near enough to be a slip. */
export const nearestWord = (written: string, known: readonly string[]): string | null => {
  if (written.length > LONGEST) return null;
  let best: string | null = null;
  // A slip changes about a third of a word; more is another word.
  let least = Math.ceil(written.length * 0.35) + 1;
  for (const word of known) {
    const distance = editDistance(written.toLowerCase(), word.toLowerCase());
    if (distance < least) {
      least = distance;
      best = word;
    }
  }
  return best;
};
