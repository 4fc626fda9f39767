/**
 * The end of the shortest stretch found, by halving, in which `holds` turns from false to true: it was false at
 * `from`, is true at `to`, and is true at the answer. Where it turns more than once, one of the turns.
 *
 * @param close stop when the stretch is no longer than this
 */
export const firstMoment = (
  holds: (t: number) => boolean,
  from: number,
  to: number,
  close: number,
): number => {
  let [lo, hi] = [from, to];
  while (hi - lo > close) {
    const middle = (lo + hi) / 2;
    if (middle <= lo || middle >= hi) break;
    if (holds(middle)) hi = middle;
    else lo = middle;
  }
  return hi;
};
