/**
 * A smallest set that shares a member with every one of the given sets: all choices of one, then of two, and so
 * on. Null where one of the sets is empty, which nothing can meet.
 */
export const smallestHittingSet = (sets: readonly ReadonlySet<string>[]): readonly string[] | null => {
  if (sets.some((one) => one.size === 0)) return null;
  for (let size = 0; ; size++) {
    const found = hitting(sets, size);
    if (found !== null) return [...found].sort();
  }
};

/** Branches on the members of the first set not yet met: one of them must be in. */
const hitting = (sets: readonly ReadonlySet<string>[], size: number): readonly string[] | null => {
  const [first] = sets;
  if (first === undefined) return [];
  if (size === 0) return null;
  for (const member of [...first].sort()) {
    const rest = hitting(
      sets.filter((one) => !one.has(member)),
      size - 1,
    );
    if (rest !== null) return [member, ...rest];
  }
  return null;
};
