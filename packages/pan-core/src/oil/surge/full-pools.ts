import { findRoot } from '../../numeric/index.js';
import type { FlowOpening } from './network.js';
import { poolAt, type SurgePool, type SurgeScene } from './surge-scene.js';

/** Past this much over its top a full pool's head is not looked for, mm. */
const MOST_HEAD = 1e4;
/** How closely a head is found, and when going round again is no use, mm. */
const CLOSE = 1e-4;
const SETTLED = 1e-2;
const MOST_ROUNDS = 6;

/** Flow through a link at the levels its pools stand at, mm³/s from → to. */
export type FlowAt = (link: number) => number;

export interface FullPools {
  /** Raises the heads of pools that can take no more until as much leaves as comes. */
  readonly raise: () => void;
  /** Groups of pools whose oil stays what it is. */
  readonly held: readonly (readonly number[])[];
}

/**
 * A pool full to its top cannot take more: its head rises over the top. Full pools with open space between them
 * have one head.
 *
 * @param engine flow into each pool other than through openings, mm³/s
 */
export const createFullPools = (scene: SurgeScene, flowAt: FlowAt, engine: Float64Array): FullPools => {
  const held: (readonly number[])[] = [];
  const tops = new Float64Array(scene.pools.length);
  const poolOf = (p: number): SurgePool => scene.pools[p] as SurgePool;
  let members: readonly number[] = [];

  const put = (head: number): void => {
    for (const p of members) poolOf(p).level = Math.max(tops[p] as number, head);
  };
  /** Net flow into the members with their heads at one height. */
  const net = (head: number): number => {
    put(head);
    let sum = 0;
    for (const p of members) {
      sum += engine[p] as number;
      const { links } = poolOf(p);
      for (let k = 0; k < links.length; k++) {
        const { from, to } = scene.links[links[k] as number] as FlowOpening;
        const [i, j] = [poolAt(scene, from), poolAt(scene, to)];
        if (members.length > 1 && members.includes(i) && members.includes(j)) continue;
        const flow = flowAt(links[k] as number);
        sum += i === p ? -flow : flow;
      }
    }
    return sum;
  };

  /** Finds the common head of a group; says by how much it moved, or null when nothing presses on it. */
  const press = (group: readonly number[]): number | null => {
    members = group;
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const p of group) {
      least = Math.min(least, tops[p] as number);
      most = Math.max(most, tops[p] as number);
    }
    if (!(net(Number.NEGATIVE_INFINITY) > 0)) return null;
    const first = poolOf(group[0] as number);
    const before = first.head;
    const [low, high] = around(net, least, Math.max(most, before));
    const head = findRoot(net, low, high, CLOSE);
    put(Number.isNaN(head) ? high : head);
    first.head = first.level;
    return Math.abs(first.head - before);
  };

  const raise = (): void => {
    held.length = 0;
    let full = 0;
    for (let p = 0; p < scene.pools.length; p++) {
      tops[p] = poolOf(p).level;
      if (poolOf(p).full) full++;
    }
    if (full === 0) return;
    const groups = clusters(scene);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      held.length = 0;
      let moved = 0;
      const take = (group: readonly number[]): boolean => {
        const shift = press(group);
        if (shift === null) return false;
        held.push(group);
        moved = Math.max(moved, shift);
        return true;
      };
      for (const group of groups) if (!take(group) && group.length > 1) for (const p of group) take([p]);
      if (moved < SETTLED || full === 1) return;
    }
  };
  return { raise, held };
};

/** A stretch over `least` with more coming than leaving at its foot and less at its head, grown from a guess. */
const around = (net: (head: number) => number, least: number, guess: number): readonly [number, number] => {
  let reach = 0.02;
  if (net(guess) > 0) {
    let low = guess;
    while (reach < MOST_HEAD && net(guess + reach) > 0) {
      low = guess + reach;
      reach *= 4;
    }
    return [low, guess + reach];
  }
  let high = guess;
  while (guess - reach > least && !(net(guess - reach) > 0)) {
    high = guess - reach;
    reach *= 4;
  }
  return [Math.max(least, guess - reach), high];
};

/** Full pools grouped by the open space between them. */
const clusters = (scene: SurgeScene): readonly (readonly number[])[] => {
  const groups: number[][] = [];
  scene.pools.forEach((pool, p) => {
    if (!pool.full) return;
    const near = groups.filter((group) =>
      pool.links.some((k) => {
        const { from, to, open } = scene.links[k] as FlowOpening;
        return open && (group.includes(poolAt(scene, from)) || group.includes(poolAt(scene, to)));
      }),
    );
    for (const group of near) groups.splice(groups.indexOf(group), 1);
    groups.push([...near.flat(), p]);
  });
  return groups;
};
