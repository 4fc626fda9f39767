/** Things to look at, the most promising first. */
export interface BestFirst<T> {
  readonly push: (item: T) => void;
  readonly pop: () => T | undefined;
  readonly size: () => number;
}

/** A binary heap: `pop` gives the item of greatest rank; equal ranks come in an order fixed by the pushes. */
export const bestFirst = <T>(rank: (item: T) => number): BestFirst<T> => {
  const heap: { readonly item: T; readonly rank: number }[] = [];
  const swap = (i: number, j: number): void => {
    [heap[i], heap[j]] = [heap[j]!, heap[i]!];
  };
  const push = (item: T): void => {
    heap.push({ item, rank: rank(item) });
    for (let i = heap.length - 1; i > 0; ) {
      const parent = (i - 1) >> 1;
      if (heap[parent]!.rank >= heap[i]!.rank) break;
      swap(i, parent);
      i = parent;
    }
  };
  const pop = (): T | undefined => {
    const top = heap[0];
    const last = heap.pop();
    if (top === undefined || last === undefined) return undefined;
    if (heap.length > 0) {
      heap[0] = last;
      for (let i = 0; ; ) {
        const [l, r] = [2 * i + 1, 2 * i + 2];
        let best = i;
        if (l < heap.length && heap[l]!.rank > heap[best]!.rank) best = l;
        if (r < heap.length && heap[r]!.rank > heap[best]!.rank) best = r;
        if (best === i) break;
        swap(i, best);
        i = best;
      }
    }
    return top.item;
  };
  return { push, pop, size: () => heap.length };
};
