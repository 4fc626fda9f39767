import type { FlowOpening } from './network.js';
import { poolAt, type SurgePool, type SurgeScene } from './surge-scene.js';

/** Past this much over its top a full pool's head is not looked for, mm. */
const MOST_HEAD = 1e4;
/** How closely a head is found, and when going round again is no use, mm. */
const CLOSE = 1e-4;
const FIRST_REACH = 0.02;
const MOST_TRIES = 60;
/** A flow that a head is found to, mm³/s. */
const NO_FLOW = 20;
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
    put(crossing(net, least, Math.max(most, before)));
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
      if (moved < SETTLED || groups.length === 1) return;
    }
  };
  return { raise, held };
};

/**
 * Where a falling net flow is nothing, at `least` or above it: grown from a guess, then by the Illinois form of
 * false position (Dowell and Jarratt, BIT 11 (1971), p. 168, from memory).
 */
const crossing = (net: (head: number) => number, least: number, guess: number): number => {
  let [low, atLow] = [guess, net(guess)];
  let [high, atHigh] = [low, atLow];
  const rises = atLow > 0;
  for (let reach = FIRST_REACH; reach < MOST_HEAD; reach *= 4) {
    if (rises) {
      [low, atLow] = [high, atHigh];
      high = guess + reach;
      atHigh = net(high);
      if (!(atHigh > 0)) break;
    } else {
      [high, atHigh] = [low, atLow];
      low = Math.max(least, guess - reach);
      atLow = net(low);
      if (atLow > 0 || low === least) break;
    }
  }
  let side = 0;
  for (let i = 0; i < MOST_TRIES && high - low > CLOSE; i++) {
    const rise = atLow - atHigh;
    const middle = rise > 0 ? low + ((high - low) * atLow) / rise : (low + high) / 2;
    const at = net(middle);
    if (Math.abs(at) < NO_FLOW) return middle;
    if (at > 0) {
      [low, atLow] = [middle, at];
      if (side > 0) atHigh /= 2;
      side = 1;
    } else {
      [high, atHigh] = [middle, at];
      if (side < 0) atLow /= 2;
      side = -1;
    }
  }
  return (low + high) / 2;
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
