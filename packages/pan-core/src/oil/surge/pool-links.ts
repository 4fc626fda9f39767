import { joinShapes } from './flow-shape.js';
import type { FlowOpening } from './network.js';
import { POOL_SIZE, type SurgePool, type SurgeScene } from './surge-scene.js';

/** Cells, capacities and openings of every pool, from the bay each cell goes with. */
export const relink = (scene: SurgeScene, y: Float64Array): void => {
  const { net, owner, pools } = scene;
  const { capacity } = net.system.body;
  for (const pool of pools) {
    pool.cells = [];
    pool.links = [];
    pool.capacity = 0;
  }
  owner.of.forEach((bay, cell) => {
    const pool = pools[bay] as SurgePool;
    pool.cells.push(cell);
    pool.capacity += capacity[cell] as number;
  });
  const sides = new Map<string, number[]>();
  net.openings.forEach(({ from, to, plane, open, passage }, w) => {
    const [p, q] = [owner.of[from] as number, owner.of[to] as number];
    if (p === q) return;
    const key = open && passage < 0 ? `${Math.min(p, q)}/${Math.max(p, q)}/${plane}` : `${w}`;
    const list = sides.get(key);
    if (list === undefined) sides.set(key, [w]);
    else list.push(w);
  });
  scene.links = [...sides.values()].map((list) => linkOf(scene, list));
  scene.links.forEach(({ from, to }, k) => {
    pools[owner.of[from] as number]?.links.push(k);
    pools[owner.of[to] as number]?.links.push(k);
  });
  for (let p = 0; p < pools.length; p++) shedExcess(scene, p, y);
};

/** Openings side by side between the same two bays, as one. */
const linkOf = (scene: SurgeScene, list: readonly number[]): FlowOpening => {
  const openings = list.map((w) => scene.net.openings[w] as FlowOpening);
  const [first] = openings as [FlowOpening];
  if (openings.length === 1) return first;
  const key = list.join();
  const known = scene.joined.get(key);
  if (known !== undefined) return known;
  const link = { ...first, ...joinShapes(openings) };
  scene.joined.set(key, link);
  return link;
};

/** A pool that has lost a cell may hold more than it can: what is too much goes over to a neighbour. */
const shedExcess = (scene: SurgeScene, p: number, y: Float64Array): void => {
  const pool = scene.pools[p] as SurgePool;
  const base = scene.firstPool + POOL_SIZE * p;
  const excess = (y[base] as number) - pool.capacity;
  if (!(excess > 1e-9 * pool.capacity)) return;
  for (const k of pool.links) {
    const opening = scene.links[k] as FlowOpening;
    if (!opening.open) continue;
    const [i, j] = [scene.owner.of[opening.from] as number, scene.owner.of[opening.to] as number];
    const q = i === p ? j : i;
    const other = scene.firstPool + POOL_SIZE * q;
    if ((y[other] as number) + excess > (scene.pools[q] as SurgePool).capacity) continue;
    y[base] = pool.capacity;
    y[other] = (y[other] as number) + excess;
    return;
  }
};
