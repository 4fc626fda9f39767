/**
 * Places for labels along a line, as near their own places as a least gap allows: least squares, by pooling
 * neighbours that would come too close (Ayer and others, Ann. Math. Statist. 26 (1955), from memory).
 *
 * @param wished in rising order
 * @returns in the same order; inside `low` to `high` where they all fit there
 */
export const spread = (
  wished: readonly number[],
  gap: number,
  low = Number.NEGATIVE_INFINITY,
  high = Number.POSITIVE_INFINITY,
): readonly number[] => {
  const pools: { sum: number; count: number }[] = [];
  wished.forEach((at, i) => {
    pools.push({ sum: at - i * gap, count: 1 });
    for (;;) {
      const [last, before] = [pools[pools.length - 1], pools[pools.length - 2]];
      if (last === undefined || before === undefined) break;
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const most = high - (wished.length - 1) * gap;
  const even = pools.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count));
  return even.map((at, i) => Math.max(low, Math.min(most, at)) + i * gap);
};
