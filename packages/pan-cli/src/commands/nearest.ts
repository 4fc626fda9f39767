/** Letters to add, drop, change or swap (next to each other) to turn one word into the other. */
const distance = (a: string, b: string): number => {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, (before[j - 2] ?? 0) + 1);
      }
      next.push(least);
    }
    before = row;
    row = next;
  }
  return row[b.length] ?? 0;
};

/** The word most like a mistyped one, or null when none is close enough to be meant. */
export const nearest = (typed: string, words: readonly string[]): string | null => {
  if (typed.length > 40) return null;
  const ranked = words
    .map((word) => ({ word, off: distance(typed.toLowerCase(), word.toLowerCase()) }))
    .sort((a, b) => a.off - b.off);
  const best = ranked[0];
  return best !== undefined && best.off <= Math.max(1, Math.floor(best.word.length / 3)) ? best.word : null;
};
