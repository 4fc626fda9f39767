import { findRoot, type Slope } from '../../numeric/index.js';
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

/** Past this much over its top a full pool's head is not looked for, mm. */
const MOST_HEAD = 1e4;

/** The rates of change of a run's state. The scene's levels are left at the time it was last called for. */
export const createSlope = (scene: SurgeScene, spots: readonly ReturnSpot[]): Slope => {
  const { net, settings } = scene;
  const note: FlowNote = { drive: 0 };
  const flows = new Float64Array(net.openings.length);
  const drives = new Float64Array(net.doors.length);
  /** Flow into each pool from the engine less what the pump takes. */
  const engine = new Float64Array(net.bays.length);

  const flowAt = (w: number, y: Float64Array, levelA?: number, levelB?: number): number => {
    const opening = net.openings[w] as FlowOpening;
    const a = poolOfCell(scene, opening.from);
    const b = poolOfCell(scene, opening.to);
    const flow = openingFlow(scene, opening, a, b, levelA ?? a.level, levelB ?? b.level, note);
    if (opening.door < 0) return flow;
    drives[opening.door] = note.drive;
    const lift = Math.min(1, Math.max(0, y[scene.firstDoor + opening.door] as number));
    return flow * (settings.doorLeak + (1 - settings.doorLeak) * lift);
  };

  /** Net flow into a full pool whose head stands at `head`. */
  const netInto = (p: number, y: Float64Array, head: number): number => {
    const pool = scene.pools[p] as SurgePool;
    let net = engine[p] as number;
    for (const w of pool.openings) {
      const out = poolAt(scene, (scene.net.openings[w] as FlowOpening).from) === p;
      net += out ? -flowAt(w, y, head, undefined) : flowAt(w, y, undefined, head);
    }
    return net;
  };

  /** A full pool takes no more: its head rises above its top until as much leaves as comes. */
  const balance = (p: number, y: Float64Array): void => {
    const pool = scene.pools[p] as SurgePool;
    if (!(netInto(p, y, pool.level) > 0)) return;
    let over = 1;
    while (over < MOST_HEAD && netInto(p, y, pool.level + over) > 0) over *= 4;
    const head = findRoot((h) => netInto(p, y, h), pool.level, pool.level + over, 1e-7);
    pool.level = Number.isNaN(head) ? pool.level + over : head;
  };

  return (t, y, out) => {
    setLevels(scene, t, y);
    out.fill(0);
    fromEngine(scene, spots, y, out, engine);
    let full = 0;
    for (let p = 0; p < scene.pools.length; p++) if ((scene.pools[p] as SurgePool).full) full++;
    for (let round = 0; round < Math.min(full, 2); round++)
      for (let p = 0; p < scene.pools.length; p++) if ((scene.pools[p] as SurgePool).full) balance(p, y);
    drives.fill(0);
    for (let k = 0; k < scene.active.length; k++) {
      const w = scene.active[k] as number;
      flows[w] = flowAt(w, y);
    }
    for (let k = 0; k < scene.active.length; k++) {
      const w = scene.active[k] as number;
      const { from, to, passage } = net.openings[w] as FlowOpening;
      const flow = flows[w] as number;
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
      for (const axis of [1, 2]) {
        const speed = axis === 1 ? pool.swingX : pool.swingY;
        const still = axis === 1 ? scene.stillX : scene.stillY;
        const rate = y[base + axis + 2] as number;
        out[base + axis] = rate;
        out[base + axis + 2] =
          speed * speed * (still - (y[base + axis] as number)) - 2 * pool.damping * speed * rate;
      }
    }
  };
};

const add = (out: Float64Array, i: number, amount: number): void => {
  out[i] = (out[i] as number) + amount;
};

/** The pump takes from the mouth's pool; what it took passes three equal stages and comes back at the spots. */
const fromEngine = (
  scene: SurgeScene,
  spots: readonly ReturnSpot[],
  y: Float64Array,
  out: Float64Array,
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
    out[s] = into - leaves;
    into = leaves;
  }
  for (const { cell, share } of spots) {
    const p = poolAt(scene, cell);
    engine[p] = (engine[p] as number) + into * share;
  }
};
