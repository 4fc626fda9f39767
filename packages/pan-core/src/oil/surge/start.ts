import type { Load } from '../../design/index.js';
import { restAnswer } from '../answer.js';
import { attitudeOf } from '../attitude.js';
import { createOriented, orient } from '../body.js';
import { createMeasure, measureCells, solveLevel } from '../level.js';
import { relink } from './pool-links.js';
import { POOL_SIZE, type SurgeScene, stateSize, TRANSIT } from './surge-scene.js';

/**
 * The state at the start: oil at rest under the path's first load's grade, the pump's oil on its way, doors shut.
 * Leaves the scene's pools linked. @throws PanError `oil-quantity` when it does not fit
 */
export const startState = (scene: SurgeScene): Float64Array => {
  const { system } = scene.net;
  const { volume, pump, returnSeconds } = scene.settings;
  const first = scene.path.at(0);
  const still: Load = { forward: 0, left: 0, grade: first.grade };
  const { rest } = restAnswer(system, volume, first.grade);
  const { up } = attitudeOf(system.model.design, still);
  const o = orient(createOriented(system.body), up);
  const measure = createMeasure();
  scene.owner.find(up[0], up[1], up[2]);
  const held = new Float64Array(scene.pools.length);
  let placed = 0;
  let largest = 0;
  for (const pool of rest.state.pools) {
    if (pool === null || pool.volume <= 0) continue;
    const level = solveLevel(o, pool.cells, pool.volume, measure);
    for (const c of pool.cells) {
      const bay = scene.owner.of[c] as number;
      const v = measureCells(o, [c], level, measure).volume;
      held[bay] = (held[bay] as number) + v;
      placed += v;
      if ((held[bay] as number) > (held[largest] as number)) largest = bay;
    }
  }
  held[largest] = (held[largest] as number) + volume - placed;
  const y = new Float64Array(stateSize(scene));
  if (pump !== null) y.fill((pump * returnSeconds) / TRANSIT, 0, TRANSIT);
  held.forEach((v, bay) => {
    const base = scene.firstPool + POOL_SIZE * bay;
    y[base] = v;
    y[base + 1] = up[0] / up[2];
    y[base + 2] = up[1] / up[2];
  });
  relink(scene, y);
  return y;
};
