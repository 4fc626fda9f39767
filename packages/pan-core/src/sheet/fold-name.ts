import type { Profile } from '../pan/index.js';

/** A word for each floor corner, front to rear, as a builder would call it. */
export const cornerNames = (profile: Profile): readonly string[] => {
  const last = profile.corners.length - 1;
  const used = new Map<string, number>();
  const words = profile.corners.map((corner, i) => {
    if (i === 0) return 'front';
    if (i === last) return 'rear';
    if (corner.turn < 0) return 'lip';
    return (profile.corners[i - 1]?.turn ?? 0) < 0 ? 'step foot' : 'floor';
  });
  return words.map((word) => {
    const n = (used.get(word) ?? 0) + 1;
    used.set(word, n);
    return words.filter((w) => w === word).length === 1 ? word : `${word} ${n}`;
  });
};
