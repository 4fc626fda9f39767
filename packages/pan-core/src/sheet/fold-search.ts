/** A course of folds and the room that each had. */
export interface Course {
  readonly order: readonly number[];
  readonly rooms: readonly number[];
  /** Whether every order was looked at that could have got further. */
  readonly complete: boolean;
}

/** Rooms asked for before the search stops and takes what got furthest. */
export const MOST_ASKED = 20_000;

/**
 * An order of folds of which each has room; where there is none, one that gets furthest, the rest after it as
 * given. What a fold has room for depends on which folds are made and not on their order, so each set of made
 * folds is entered once: at most n·2ⁿ rooms for n folds instead of n!, and never more than {@link MOST_ASKED}.
 *
 * @param folds in the order that is tried first
 * @param roomAt room of a fold after the folds of a set
 * @param need room that a fold must have
 */
export const searchFolds = (
  folds: readonly number[],
  roomAt: (fold: number, done: ReadonlySet<number>) => number,
  need: number,
): Course => {
  const entered = new Set<string>();
  let asked = 0;
  let best: Pick<Course, 'order' | 'rooms'> = { order: [], rooms: [] };
  const go = (order: readonly number[], rooms: readonly number[]): boolean => {
    if (order.length > best.order.length) best = { order, rooms };
    if (order.length === folds.length) return true;
    const key = [...order].sort((a, b) => a - b).join();
    if (entered.has(key)) return false;
    entered.add(key);
    const done = new Set(order);
    return folds.some((fold) => {
      if (done.has(fold) || asked >= MOST_ASKED) return false;
      asked++;
      const room = roomAt(fold, done);
      return room >= need && go([...order, fold], [...rooms, room]);
    });
  };
  if (go([], [])) return { ...best, complete: true };
  const order = [...best.order, ...folds.filter((k) => !best.order.includes(k))];
  return {
    order,
    rooms: order.map((k, i) => roomAt(k, new Set(order.slice(0, i)))),
    complete: asked < MOST_ASKED,
  };
};
