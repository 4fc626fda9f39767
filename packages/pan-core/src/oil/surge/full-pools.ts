import { findRoot } from '../../numeric/index.js';
import type { FlowOpening } from './network.js';
import { poolAt, type SurgePool, type SurgeScene } from './surge-scene.js';

/** Past this much over its top a full pool's head is not looked for, mm. */
const MOST_HEAD = 1e4;
/** How closely a head is found, and when going round again is no use, mm. */
const CLOSE = 1e-7;
const SETTLED = 1e-3;
const MOST_ROUNDS = 6;

/** Flow through an opening at the levels its pools stand at, mm³/s from → to. */
export type FlowAt = (w: number) => number;

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
  const poolOf = (p: number): SurgePool => scene.pools[p] as SurgePool;

  const netInto = (members: readonly number[]): number => {
    let net = 0;
    for (const p of members) {
      net += engine[p] as number;
      for (const w of poolOf(p).openings) {
        const { from, to } = scene.net.openings[w] as FlowOpening;
        const [i, j] = [poolAt(scene, from), poolAt(scene, to)];
        if (members.includes(i) && members.includes(j)) continue;
        net += i === p ? -flowAt(w) : flowAt(w);
      }
    }
    return net;
  };

  /** Finds the common head of some pools; says by how much it moved, or null when they are not pressed. */
  const press = (members: readonly number[], tops: readonly number[]): number | null => {
    const before = poolOf(members[0] as number).level;
    const put = (head: number): void => {
      members.forEach((p, k) => {
        poolOf(p).level = Math.max(tops[k] as number, head);
      });
    };
    const top = Math.max(...tops);
    put(Number.NEGATIVE_INFINITY);
    if (!(netInto(members) > 0)) return null;
    const net = (head: number): number => {
      put(head);
      return netInto(members);
    };
    let over = 1;
    while (over < MOST_HEAD && net(top + over) > 0) over *= 4;
    const head = findRoot(net, Math.min(...tops), top + over, CLOSE);
    put(Number.isNaN(head) ? top + over : head);
    return Math.abs(poolOf(members[0] as number).level - before);
  };

  const raise = (): void => {
    held.length = 0;
    const full: number[] = [];
    for (let p = 0; p < scene.pools.length; p++) if (poolOf(p).full) full.push(p);
    if (full.length === 0) return;
    const tops = new Map(full.map((p) => [p, poolOf(p).level]));
    const topsOf = (members: readonly number[]): number[] => members.map((p) => tops.get(p) as number);
    const groups = full.length === 1 ? [full] : clusters(scene, full);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      held.length = 0;
      let moved = 0;
      for (const group of groups) {
        const shift = press(group, topsOf(group));
        if (shift !== null) {
          held.push(group);
          moved = Math.max(moved, shift);
          continue;
        }
        if (group.length === 1) continue;
        for (const p of group) {
          const alone = press([p], topsOf([p]));
          if (alone === null) continue;
          held.push([p]);
          moved = Math.max(moved, alone);
        }
      }
      if (moved < SETTLED) return;
    }
  };
  return { raise, held };
};

/** Full pools grouped by the open space between them. */
const clusters = (scene: SurgeScene, full: readonly number[]): readonly (readonly number[])[] => {
  const group = new Map(full.map((p) => [p, [p]]));
  for (const p of full)
    for (const w of (scene.pools[p] as SurgePool).openings) {
      const { from, to, open } = scene.net.openings[w] as FlowOpening;
      const [a, b] = [group.get(poolAt(scene, from)), group.get(poolAt(scene, to))];
      if (!open || a === undefined || b === undefined || a === b) continue;
      a.push(...b);
      for (const q of b) group.set(q, a);
    }
  return [...new Set(group.values())];
};
