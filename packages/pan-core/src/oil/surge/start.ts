import type { Vec3 } from '../../numeric/index.js';
import { restAnswer } from '../answer.js';
import { attitudeOf } from '../attitude.js';
import { createOriented, orient } from '../body.js';
import { createMeasure, measureCells, solveLevel } from '../level.js';
import { relink } from './pool-links.js';
import { cellAt } from './return-spot.js';
import type { PlacedOil } from './settings.js';
import { POOL_SIZE, type SurgeScene, stateSize, TRANSIT } from './surge-scene.js';

/**
 * The state at the start: oil at rest under the path's first load's grade, the pump's oil on its way, doors shut.
 * Leaves the scene's pools linked. @throws PanError `oil-quantity` when it does not fit
 */
export const startState = (scene: SurgeScene): Float64Array => {
  const { system } = scene.net;
  const { pump, returnSeconds, placed } = scene.settings;
  const first = scene.path.at(0);
  const { up } = attitudeOf(system.model.design, { forward: 0, left: 0, grade: first.grade });
  scene.owner.find(up[0], up[1], up[2]);
  const held = placed === null ? atRest(scene, up, first.grade) : placedIn(scene, placed);
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

/** Oil in each bay at rest; what measuring loses goes to the fullest. */
const atRest = (scene: SurgeScene, up: Vec3, grade: number): Float64Array => {
  const { system } = scene.net;
  const { volume } = scene.settings;
  const { rest } = restAnswer(system, volume, grade);
  const o = orient(createOriented(system.body), up);
  const measure = createMeasure();
  const held = new Float64Array(scene.pools.length);
  let placed = 0;
  for (const pool of rest.state.pools) {
    if (pool === null || pool.volume <= 0) continue;
    const level = solveLevel(o, pool.cells, pool.volume, measure);
    for (const c of pool.cells) {
      const bay = scene.owner.of[c] as number;
      const v = measureCells(o, [c], level, measure).volume;
      held[bay] = (held[bay] as number) + v;
      placed += v;
    }
  }
  const fullest = held.indexOf(Math.max(...held));
  held[fullest] = (held[fullest] as number) + volume - placed;
  return held;
};

const placedIn = (scene: SurgeScene, placed: readonly PlacedOil[]): Float64Array => {
  const { model } = scene.net.system;
  const held = new Float64Array(scene.pools.length);
  for (const { at, volume } of placed) {
    const bay = scene.owner.of[cellAt(model, at)] as number;
    held[bay] = (held[bay] as number) + volume;
  }
  return held;
};
