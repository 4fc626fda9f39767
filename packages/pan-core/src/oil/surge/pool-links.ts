import { POOL_SIZE, type SurgePool, type SurgeScene } from './surge-scene.js';

/** Cells, capacities and openings of every pool, from the bay each cell goes with. */
export const relink = (scene: SurgeScene, y: Float64Array): void => {
  const { net, owner, pools } = scene;
  const { capacity } = net.system.body;
  for (const pool of pools) {
    pool.cells = [];
    pool.openings = [];
    pool.capacity = 0;
  }
  owner.of.forEach((bay, cell) => {
    const pool = pools[bay] as SurgePool;
    pool.cells.push(cell);
    pool.capacity += capacity[cell] as number;
  });
  scene.active = [];
  net.openings.forEach(({ from, to }, w) => {
    const [p, q] = [owner.of[from] as number, owner.of[to] as number];
    if (p === q) return;
    scene.active.push(w);
    pools[p]?.openings.push(w);
    pools[q]?.openings.push(w);
  });
  for (let p = 0; p < pools.length; p++) shedExcess(scene, p, y);
};

/** A pool that has lost a cell may hold more than it can: what is too much goes over to a neighbour. */
const shedExcess = (scene: SurgeScene, p: number, y: Float64Array): void => {
  const pool = scene.pools[p] as SurgePool;
  const base = scene.firstPool + POOL_SIZE * p;
  const excess = (y[base] as number) - pool.capacity;
  if (!(excess > 1e-9 * pool.capacity)) return;
  for (const w of pool.openings) {
    const opening = scene.net.openings[w];
    if (opening?.open !== true) continue;
    const [i, j] = [scene.owner.of[opening.from] as number, scene.owner.of[opening.to] as number];
    const q = i === p ? j : i;
    const other = scene.firstPool + POOL_SIZE * q;
    if ((y[other] as number) + excess > (scene.pools[q] as SurgePool).capacity) continue;
    y[base] = pool.capacity;
    y[other] = (y[other] as number) + excess;
    return;
  }
};
