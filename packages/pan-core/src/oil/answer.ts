import type { Load } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { freeze, type Vec3 } from '../numeric/index.js';
import type { Mouth, PanModel } from '../pan/index.js';
import { AT_REST, attitudeOf } from './attitude.js';
import { type Body, createBody, createOriented, heightOf, type Oriented, orient } from './body.js';
import { createMeasure, measureCells } from './level.js';
import { type Lip, lipOf } from './lip.js';
import { rimHeight, submergenceOf } from './mouth-depth.js';
import {
  createPool,
  createScene,
  DRY,
  levelOf,
  NO_OIL,
  type Pool,
  type PoolState,
  type Scene,
} from './pools.js';
import { aim, ramp } from './ramp.js';
import { type Basin, basinOf, type Rest, restOil } from './rest.js';
import { type Gating, type Ways, waysOf } from './ways.js';

/** A pan made ready for oil: flat cells and the ways under each gating. Build once, ask often. */
export interface OilSystem {
  readonly model: PanModel;
  readonly body: Body;
  readonly ways: Readonly<Record<Gating, Ways>>;
  /** Standing level in the installed tilt. */
  readonly basin: Basin;
}

/** One pool: volume in mm³ and surface in mm. */
export interface PoolAnswer {
  readonly volume: number;
  /** Depth of the pool's surface below the rail along pan −z at the mouth's centre, mm, positive below. */
  readonly surface: number;
  readonly hasPickup: boolean;
  readonly cells: readonly number[];
  /** Height of the surface along `up` from the pan origin, mm. */
  readonly level: number;
}

/** The mouth in its pool: submergence in mm, negative when bared. */
export interface PickupAnswer {
  /** Least depth of the rim below its own pool's surface along effective gravity, mm; negative when bared. */
  readonly submergence: number;
  readonly covered: boolean;
  /** Oil in the mouth's pool above the level that bares it, mm³. */
  readonly spare: number;
  /** Seconds until the pump bares it with no return; null when the pump's flow is not known. */
  readonly drawSeconds: number | null;
}

/** The pools of oil after a ramp, and the mouth in them. */
export interface OilAnswer {
  readonly gating: Gating;
  readonly load: Load;
  readonly up: Vec3;
  readonly pools: readonly PoolAnswer[];
  readonly pickup: PickupAnswer;
  /** The lowest way out of the mouth's pool. */
  readonly lip: Lip | null;
}

/** @throws PanError `shape-closed-room` where a compartment of the pan has no opening at all. */
export const createOilSystem = (model: PanModel): OilSystem => {
  const body = createBody(model);
  const ways = {
    rest: waysOf(model, body, 'rest'),
    held: waysOf(model, body, 'held'),
    settled: waysOf(model, body, 'settled'),
  };
  refuseClosedRooms(model, ways.rest);
  return { model, body, ways, basin: basinAt(model, body, ways.rest, AT_REST) };
};

const basinAt = (model: PanModel, body: Body, ways: Ways, load: Load): Basin =>
  basinOf(orient(createOriented(body), attitudeOf(model.design, load).up), ways, model.mouth.cell);

const refuseClosedRooms = (model: PanModel, ways: Ways): void => {
  const seen = new Set([model.mouth.cell]);
  const list = [model.mouth.cell];
  for (let k = 0; k < list.length; k++) {
    for (const w of ways.at[list[k] as number] as readonly number[]) {
      const way = ways.list[w] as Ways['list'][number];
      for (const c of [way.from, way.to])
        if (!seen.has(c)) {
          seen.add(c);
          list.push(c);
        }
    }
  }
  const shut = model.cells.findIndex((_, c) => !seen.has(c) && (model.volumes[c] as number) > 1);
  if (shut < 0) return;
  const points = (model.cells[shut] as (typeof model.cells)[number]).faces.flatMap((f) => f.loop);
  const mean = (i: 0 | 1 | 2): string => (points.reduce((s, p) => s + p[i], 0) / points.length).toFixed(0);
  throw new PanError({
    code: 'shape-closed-room',
    path: ['baffles'],
    message: `The room around x ${mean(0)}, y ${mean(1)}, z ${mean(2)} mm has no opening: oil can neither enter nor leave it.`,
    advice: 'Give a wall there a weep, a door or a hole, or end it short.',
  });
};

/** Oil at rest in the installed tilt and on a grade, in mm³ in the pan. */
export const restAnswer = (
  system: OilSystem,
  volume: number,
  grade = 0,
): OilAnswer & { readonly rest: Rest } => {
  const load = { ...AT_REST, grade };
  const { basin, rest } = settledIn(system, volume, load);
  const scene = createScene(basin.oriented, system.ways.rest);
  return { ...answerOf(system, scene, rest.state, 'rest', load), rest };
};

const settledIn = (system: OilSystem, volume: number, load: Load): { basin: Basin; rest: Rest } => {
  refuseTooMuch(system, volume);
  const { model, ways, body } = system;
  const basin = load.grade === 0 ? system.basin : basinAt(model, body, ways.rest, load);
  return { basin, rest: restOil(basin, volume) };
};

/**
 * Oil after the load has come on infinitely slowly from rest, by way of `via`.
 *
 * @param volume oil in the pan, mm³
 * @throws PanError `oil-quantity` when it does not fit
 */
export const rampAnswer = (
  system: OilSystem,
  volume: number,
  load: Load,
  gating: 'held' | 'settled',
  via: readonly Load[] = [],
): OilAnswer => {
  const { model, ways, body } = system;
  const standing = { ...AT_REST, grade: load.grade };
  const start = settledIn(system, volume, standing).rest.state;
  const scene = createScene(createOriented(body), ways[gating]);
  const state = ramp(model.design, scene, start, [standing, ...via, load]);
  return answerOf(system, scene, state, gating, load);
};

const refuseTooMuch = ({ body }: OilSystem, volume: number): void => {
  const whole = body.capacity.reduce((a, b) => a + b, 0);
  if (!(volume >= 0) || volume > whole) {
    throw new PanError({
      code: 'oil-quantity',
      path: ['oil', 'fill'],
      message: `${(volume / 1e6).toFixed(2)} L do not fit: pan and crankcase together hold ${(whole / 1e6).toFixed(2)} L.`,
      value: volume / 1e6,
      limit: whole / 1e6,
      unit: 'L',
      advice: 'Pour less, or make the sump larger.',
    });
  }
};

const answerOf = (
  system: OilSystem,
  scene: Scene,
  state: PoolState,
  gating: Gating,
  load: Load,
): OilAnswer => {
  const { model } = system;
  const o = aim(model.design, scene, load);
  const shift = heightOf(o, [0, 0, 0]);
  const surface = (h: number): number => depthUnder(o, model.mouth, h);
  const mine = state.of[model.mouth.cell] as number;
  const minePool = mine === DRY ? createPool([model.mouth.cell], 0) : (state.pools[mine] as Pool);
  const pools: PoolAnswer[] = [];
  const wet = state.pools.filter((p): p is Pool => p !== null && p.volume > NO_OIL);
  for (const pool of wet.includes(minePool) ? wet : [...wet, minePool]) {
    const h = levelOf(scene, pool);
    pools.push({
      volume: pool.volume,
      surface: surface(h),
      hasPickup: pool === minePool,
      cells: pool.cells,
      level: h - shift,
    });
  }
  pools.sort((a, b) => b.volume - a.volume);
  return freeze({
    gating,
    load,
    up: [...o.up] as Vec3,
    pools,
    pickup: pickupOf(system, scene, state, minePool),
    lip: lipOf(system, scene, state, levelOf(scene, minePool)),
  });
};

/** Pan z of a level plane under the mouth's centre, as a depth. */
export const depthUnder = (o: Oriented, mouth: Mouth, h: number): number => {
  const [x, y] = mouth.centre;
  const atRail = heightOf(o, [x, y, 0]);
  return (atRail - h) / o.up[2];
};

const pickupOf = (system: OilSystem, scene: Scene, state: PoolState, pool: Pool): PickupAnswer => {
  const submergence = submergenceOf(system, scene, state);
  const below = measureCells(scene.oriented, pool.cells, rimHeight(system, scene), createMeasure()).volume;
  const spare = submergence > 0 ? Math.max(0, pool.volume - below) : 0;
  const pump = system.model.design.oil.pump;
  return {
    submergence,
    covered: submergence > 0,
    spare,
    drawSeconds: pump === null ? null : spare / pump,
  };
};
