import { type Design, type Limit, limitToward, type OilSystem } from 'pan-core';

/** What a worker needs for its part of a ring of limits: the next direction is drawn from one shared count. */
export interface LimitsShare {
  readonly design: Design;
  readonly volume: number;
  readonly count: number;
  readonly next: Int32Array;
}

/** A direction's number in the ring and its limit. */
export type Found = readonly [number, Limit];

/** Takes directions until none is left, `most` of them. */
export const takeDirections = (
  system: OilSystem,
  { volume, count, next }: Pick<LimitsShare, 'volume' | 'count' | 'next'>,
  most = Number.POSITIVE_INFINITY,
): readonly Found[] => {
  const found: Found[] = [];
  while (found.length < most) {
    const i = Atomics.add(next, 0, 1);
    if (i >= count) break;
    found.push([i, limitToward(system, volume, (360 * i) / count)]);
  }
  return found;
};
