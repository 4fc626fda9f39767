import type { Vec2 } from '../numeric/index.js';
import { type HoleDatum, networkStrength } from './hole-network.js';

type Pair = readonly [number, number];

/** Distances worth measuring, and how far a slip in each would show. */
export interface DistanceProposal {
  readonly pairs: readonly Pair[];
  readonly redundancy: readonly number[];
  readonly least: number;
}

const MOST_CHANGES = 400;

const allPairs = (points: readonly Vec2[], reach: number): readonly Pair[] =>
  points.flatMap((p, a) =>
    points.flatMap((q, b): Pair[] =>
      b > a && Math.hypot(q[0] - p[0], q[1] - p[1]) <= reach ? [[a, b]] : [],
    ),
  );

/**
 * Which distances to take between holes that lie roughly at `points`, so that a slip in any of them shows.
 * Exchanges the distance the others know best for the one they know least, which makes the whole set as telling as
 * it can be and at the same time levels the redundancy (D-optimal design: J. Kiefer and J. Wolfowitz, Canadian J.
 * Math. 12 (1960) 363–366; exchange after V. V. Fedorov, Theory of Optimal Experiments (1972); from memory).
 * null when even all distances within `reach` leave a hole free.
 */
export const proposeDistances = (
  points: readonly Vec2[],
  datum: HoleDatum,
  count: number,
  reach = Number.POSITIVE_INFINITY,
): DistanceProposal | null => {
  const candidates = allPairs(points, reach);
  const whole = networkStrength(points, candidates, datum);
  if (whole === null || count < 2 * points.length - 3) return null;
  let chosen: readonly Pair[] = candidates;
  // From all of them, the one whose loss is least felt goes first.
  while (chosen.length > count) {
    const strength = networkStrength(points, chosen, datum);
    if (strength === null) return null;
    const most = Math.max(...strength.redundancy);
    chosen = chosen.filter((_, i) => i !== strength.redundancy.indexOf(most));
  }
  return exchanged(points, datum, candidates, chosen);
};

const exchanged = (
  points: readonly Vec2[],
  datum: HoleDatum,
  candidates: readonly Pair[],
  start: readonly Pair[],
): DistanceProposal | null => {
  let chosen = start;
  let best = proposalOf(points, datum, chosen);
  if (best === null) return null;
  for (let change = 0; change < MOST_CHANGES; change++) {
    const strength = networkStrength(points, chosen, datum);
    if (strength === null) break;
    const taken = new Set(chosen.map(([a, b]) => `${a} ${b}`));
    const open = candidates.filter(([a, b]) => !taken.has(`${a} ${b}`));
    const known = strength.redundancy.map((r, i) => [r, i] as const).sort((a, b) => b[0] - a[0])[0];
    const spreads = open.map((pair) => strength.spread(pair));
    const widest = spreads.indexOf(Math.max(...spreads));
    // A swap helps when what comes in is known worse than what goes out already is without itself.
    if (known === undefined || widest < 0) break;
    const next = [...chosen.filter((_, i) => i !== known[1]), open[widest] as Pair];
    const tried = proposalOf(points, datum, next);
    if (tried === null || tried.least <= best.least + 1e-9) break;
    [chosen, best] = [next, tried];
  }
  return best;
};

const proposalOf = (
  points: readonly Vec2[],
  datum: HoleDatum,
  pairs: readonly Pair[],
): DistanceProposal | null => {
  const ordered = [...pairs].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const strength = networkStrength(points, ordered, datum);
  if (strength === null) return null;
  const { redundancy } = strength;
  return { pairs: ordered, redundancy, least: Math.min(...redundancy) };
};
