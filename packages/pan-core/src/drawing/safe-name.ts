// Names that old systems keep for devices, whatever follows the point.
const DEVICE = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/;
const LONGEST = 40;

/** A file name of a–z, 0–9 and hyphens from any words, never a device's; "part" when nothing is left. */
export const safeName = (words: string): string => {
  const plain = words
    .slice(0, 10 * LONGEST)
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');
  if (plain === '') return 'part';
  return DEVICE.test(plain) ? `${plain}-part` : plain;
};

/** A safe name for each of several words, all different even where letters' case does not count. */
export const safeNames = (all: readonly string[]): readonly string[] => {
  const used = new Set<string>();
  return all.map((words) => {
    const name = safeName(words);
    let free = name;
    for (let n = 2; used.has(free); n++) free = `${name}-${n}`;
    used.add(free);
    return free;
  });
};
