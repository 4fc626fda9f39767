import type { SurgeNet } from './network.js';

/** Finds which bay each cell goes with; keeps its order of openings from one call to the next. */
export interface BayOwner {
  /** Bay of each cell. */
  readonly of: Int32Array;
  /** Finds the owners with gravity against `up`; says whether any changed. */
  readonly find: (x: number, y: number, z: number) => boolean;
}

/**
 * A thin cell belongs to the bay it reaches over the lowest sills: openings are taken from the lowest sill up,
 * and two groups become one unless both hold a bay already. Each bay so ends at the crests around it.
 */
export const createBayOwner = (net: SurgeNet): BayOwner => {
  const cells = net.system.body.cellCount;
  const free = net.openings.map((_, i) => i).filter((i) => net.openings[i]?.open);
  const order = Int32Array.from(free);
  const sills = new Float64Array(net.openings.length);
  const group = new Int32Array(cells);
  const bayOf = new Int32Array(cells);
  const seedBay = new Int32Array(cells).fill(-1);
  net.bays.forEach((seeds, bay) => {
    for (const cell of seeds) seedBay[cell] = bay;
  });
  const of = new Int32Array(cells).fill(-1);
  const thin = seedBay.includes(-1);
  const root = (c: number): number => {
    let r = c;
    while (group[r] !== r) r = group[r] as number;
    group[c] = r;
    return r;
  };
  const find = (x: number, y: number, z: number): boolean => {
    if (!thin && of[0] !== -1) return false;
    for (let k = 0; k < order.length; k++) {
      const w = order[k] as number;
      sills[w] = sillAlong(net, w, x, y, z);
    }
    sortBy(order, sills);
    for (let c = 0; c < cells; c++) {
      group[c] = c;
      bayOf[c] = seedBay[c] as number;
    }
    for (let k = 0; k < order.length; k++) {
      const opening = net.openings[order[k] as number] as SurgeNet['openings'][number];
      const [a, b] = [root(opening.from), root(opening.to)];
      if (a === b || ((bayOf[a] as number) >= 0 && (bayOf[b] as number) >= 0)) continue;
      group[b] = a;
      if ((bayOf[a] as number) < 0) bayOf[a] = bayOf[b] as number;
    }
    let changed = false;
    for (let c = 0; c < cells; c++) {
      const bay = bayOf[root(c)] as number;
      if (of[c] !== bay) changed = true;
      of[c] = bay;
    }
    return changed;
  };
  return { of, find };
};

/** Lowest point of an opening along up, mm above the body's origin. */
export const sillAlong = (net: SurgeNet, w: number, x: number, y: number, z: number): number => {
  const { corners } = net.openings[w] as SurgeNet['openings'][number];
  let sill = Number.POSITIVE_INFINITY;
  for (let k = 0; k < corners.length; k += 3) {
    const h = (corners[k] as number) * x + (corners[k + 1] as number) * y + (corners[k + 2] as number) * z;
    if (h < sill) sill = h;
  }
  return sill;
};

/** Insertion sort: from one direction to the next the order hardly changes. */
const sortBy = (order: Int32Array, key: Float64Array): void => {
  for (let i = 1; i < order.length; i++) {
    const w = order[i] as number;
    let j = i - 1;
    while (j >= 0 && (key[order[j] as number] as number) > (key[w] as number)) {
      order[j + 1] = order[j] as number;
      j--;
    }
    order[j + 1] = w;
  }
};
