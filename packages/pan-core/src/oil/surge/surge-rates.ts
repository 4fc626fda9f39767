import type { Slope } from '../../numeric/index.js';
import { createFullPools } from './full-pools.js';
import { drawShare } from './mouth-draw.js';
import type { FlowOpening } from './network.js';
import { type FlowNote, openingFlow } from './opening-flow.js';
import type { ReturnSpot } from './return-spot.js';
import {
  POOL_SIZE,
  poolAt,
  poolOfCell,
  type SurgePool,
  type SurgeScene,
  setLevels,
  TRANSIT,
} from './surge-scene.js';

export interface SurgeRates {
  /** The rates of change of a run's state; sets the levels too. */
  readonly slope: Slope;
  /** Sets every pool's direction and level for a time and state, full pools' heads included. */
  readonly levels: (t: number, y: Float64Array) => void;
}

/** @param spots where oil comes back from the engine */
export const createRates = (scene: SurgeScene, spots: readonly ReturnSpot[]): SurgeRates => {
  const { net, settings } = scene;
  const note: FlowNote = { drive: 0 };
  const drives = new Float64Array(net.doors.length);
  /** Flow into each pool from the engine less what the pump takes. */
  const engine = new Float64Array(net.bays.length);

  let state: Float64Array = drives;
  const flowAt = (k: number): number => {
    const opening = scene.links[k] as FlowOpening;
    const flow = openingFlow(
      scene,
      opening,
      poolOfCell(scene, opening.from),
      poolOfCell(scene, opening.to),
      note,
    );
    if (opening.door < 0) return flow;
    drives[opening.door] = note.drive;
    const lift = Math.min(1, Math.max(0, state[scene.firstDoor + opening.door] as number));
    return flow * (settings.doorLeak + (1 - settings.doorLeak) * lift);
  };
  const full = createFullPools(scene, flowAt, engine);

  const stages = new Float64Array(TRANSIT);
  const levels = (t: number, y: Float64Array): void => {
    setLevels(scene, t, y);
    fromEngine(scene, spots, y, stages, engine);
    state = y;
    full.raise();
  };

  const slope: Slope = (t, y, out) => {
    levels(t, y);
    out.fill(0);
    out.set(stages);
    drives.fill(0);
    for (let k = 0; k < scene.links.length; k++) {
      const { from, to, passage } = scene.links[k] as FlowOpening;
      const flow = flowAt(k);
      add(out, scene.firstPool + POOL_SIZE * poolAt(scene, from), -flow);
      add(out, scene.firstPool + POOL_SIZE * poolAt(scene, to), flow);
      if (passage >= 0) add(out, scene.firstLitre + 2 * passage + (flow < 0 ? 1 : 0), Math.abs(flow));
    }
    for (let d = 0; d < net.doors.length; d++) {
      const lift = Math.min(1, Math.max(0, (drives[d] as number) / settings.doorHead));
      out[scene.firstDoor + d] = (lift - (y[scene.firstDoor + d] as number)) / settings.doorSeconds;
    }
    for (let p = 0; p < scene.pools.length; p++) {
      const pool = scene.pools[p] as SurgePool;
      const base = scene.firstPool + POOL_SIZE * p;
      add(out, base, engine[p] as number);
      if (!settings.swings) continue;
      for (let axis = 1; axis <= 2; axis++) {
        const speed = pool.swing[axis - 1] as number;
        const still = axis === 1 ? scene.stillX : scene.stillY;
        const rate = y[base + axis + 2] as number;
        out[base + axis] = rate;
        out[base + axis + 2] =
          speed * speed * (still - (y[base + axis] as number)) -
          2 * (pool.damping[axis - 1] as number) * speed * rate;
      }
    }
    for (const group of full.held) keep(scene, group, out);
  };
  return { slope, levels };
};

/** Pools that can take no more keep what they have; what little is left over goes to each alike. */
const keep = (scene: SurgeScene, group: readonly number[], out: Float64Array): void => {
  const at = (p: number): number => scene.firstPool + POOL_SIZE * p;
  const sum = group.reduce((total, p) => total + (out[at(p)] as number), 0);
  for (const p of group) out[at(p)] = sum / group.length;
};

const add = (out: Float64Array, i: number, amount: number): void => {
  out[i] = (out[i] as number) + amount;
};

/** The pump takes from the mouth's pool; what it took passes three equal stages and comes back at the spots. */
const fromEngine = (
  scene: SurgeScene,
  spots: readonly ReturnSpot[],
  y: Float64Array,
  stages: Float64Array,
  engine: Float64Array,
): void => {
  engine.fill(0);
  const { pump, returnSeconds } = scene.settings;
  if (pump === null) return;
  const mouth = poolAt(scene, scene.net.system.model.mouth.cell);
  const taken = pump * drawShare(scene, scene.pools[mouth] as SurgePool);
  engine[mouth] = -taken;
  const rate = TRANSIT / returnSeconds;
  let into = taken;
  for (let s = 0; s < TRANSIT; s++) {
    const leaves = rate * (y[s] as number);
    stages[s] = into - leaves;
    into = leaves;
  }
  for (const { cell, share } of spots) {
    const p = poolAt(scene, cell);
    engine[p] = (engine[p] as number) + into * share;
  }
};
