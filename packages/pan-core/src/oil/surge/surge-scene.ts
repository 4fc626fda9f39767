import { attitudeOf } from '../attitude.js';
import { createOriented, type Oriented } from '../body.js';
import { GRAVITY } from '../critical.js';
import { createMeasure, type Measure, solveLevel } from '../level.js';
import { type BayOwner, createBayOwner } from './bay-owner.js';
import type { LoadPath } from './load-path.js';
import type { FlowOpening, SurgeNet } from './network.js';
import type { SurgeSettings } from './settings.js';

/** A bay's oil: one level and one surface direction. Lengths in mm along its own up, from the body's origin. */
export interface SurgePool {
  cells: number[];
  readonly up: Float64Array;
  volume: number;
  level: number;
  /** Free surface and its mean over the whole height, mm². */
  area: number;
  mean: number;
  low: number;
  capacity: number;
  dry: boolean;
  full: boolean;
  /** Level of a pressed full pool when it was last found: a guess for the next. */
  head: number;
  /** How its surface swings after gravity along x and y: speed, rad/s, and share of critical damping. */
  readonly swing: Float64Array;
  readonly damping: Float64Array;
  /** Places of its openings in the list of links. */
  links: number[];
}

/** Numbers of a pool in the state: volume, surface slope along x and y, and their rates. */
export const POOL_SIZE = 5;
/** Stages oil passes on its way through the engine; their volumes come first in the state. */
export const TRANSIT = 3;
/** A pool with less is dry, mm³. */
export const DRY_VOLUME = 1e-3;
/** Oil past a full pool's top stands as in a pipe of this share of its mean section. */
const STANDPIPE = 0.02;
/** Where a dry pool's level counts as standing, mm. */
const NO_LEVEL = -1e9;

/** Everything one run works on. The state is TRANSIT, doors, litres forth and back, then the pools. */
export interface SurgeScene {
  readonly net: SurgeNet;
  readonly settings: SurgeSettings;
  readonly path: LoadPath;
  readonly oriented: Oriented;
  readonly measure: Measure;
  readonly owner: BayOwner;
  readonly firstDoor: number;
  readonly firstLitre: number;
  readonly firstPool: number;
  /** One for each bay. */
  readonly pools: readonly SurgePool[];
  /** Openings between two pools; those side by side in one plane are one. */
  links: FlowOpening[];
  /** Such joined openings by the numbers they are made of. */
  readonly joined: Map<string, FlowOpening>;
  /** At the time levels were last set: magnitude of effective gravity, mm/s², and the slope of a still surface. */
  gravity: number;
  stillX: number;
  stillY: number;
}

const createPool = (): SurgePool => ({
  cells: [],
  up: new Float64Array([0, 0, 1]),
  volume: 0,
  level: NO_LEVEL,
  area: 0,
  mean: 0,
  low: 0,
  capacity: 0,
  dry: true,
  full: false,
  head: NO_LEVEL,
  swing: new Float64Array(2),
  damping: new Float64Array([1, 1]),
  links: [],
});

export const createSurgeScene = (net: SurgeNet, settings: SurgeSettings, path: LoadPath): SurgeScene => ({
  net,
  settings,
  path,
  oriented: createOriented(net.system.body),
  measure: createMeasure(),
  owner: createBayOwner(net),
  firstDoor: TRANSIT,
  firstLitre: TRANSIT + net.doors.length,
  firstPool: TRANSIT + net.doors.length + 2 * net.passages.length,
  pools: net.bays.map(createPool),
  links: [],
  joined: new Map(),
  gravity: GRAVITY,
  stillX: 0,
  stillY: 0,
});

export const poolAt = (scene: SurgeScene, cell: number): number => scene.owner.of[cell] as number;

export const poolOfCell = (scene: SurgeScene, cell: number): SurgePool =>
  scene.pools[poolAt(scene, cell)] as SurgePool;

/** Numbers in a state. */
export const stateSize = (scene: SurgeScene): number => scene.firstPool + POOL_SIZE * scene.pools.length;

/** Sets gravity, then every pool's surface direction and level, from time and state. */
export const setLevels = (scene: SurgeScene, t: number, y: Float64Array): void => {
  const { pull } = attitudeOf(scene.net.system.model.design, scene.path.at(t));
  scene.gravity = GRAVITY * Math.hypot(pull[0], pull[1], pull[2]);
  scene.stillX = pull[0] / pull[2];
  scene.stillY = pull[1] / pull[2];
  for (let p = 0; p < scene.pools.length; p++) setLevel(scene, p, y);
};

const setLevel = (scene: SurgeScene, p: number, y: Float64Array): void => {
  const pool = scene.pools[p] as SurgePool;
  const base = scene.firstPool + POOL_SIZE * p;
  const volume = y[base] as number;
  const sx = scene.settings.swings ? (y[base + 1] as number) : scene.stillX;
  const sy = scene.settings.swings ? (y[base + 2] as number) : scene.stillY;
  const uz = 1 / Math.sqrt(1 + sx * sx + sy * sy);
  pool.up[0] = sx * uz;
  pool.up[1] = sy * uz;
  pool.up[2] = uz;
  pool.volume = volume;
  pool.dry = volume <= DRY_VOLUME;
  if (pool.dry) {
    pool.level = NO_LEVEL;
    pool.area = 0;
    pool.full = false;
    return;
  }
  orientCells(scene.oriented, pool.cells, pool.up);
  pool.full = volume >= pool.capacity * (1 - 1e-9);
  scene.measure.area = 0;
  pool.level = solveLevel(scene.oriented, pool.cells, volume, scene.measure, pool.level);
  pool.area = pool.full ? 0 : scene.measure.area;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < pool.cells.length; k++) {
    const c = pool.cells[k] as number;
    low = Math.min(low, scene.oriented.low[c] as number);
    high = Math.max(high, scene.oriented.high[c] as number);
  }
  pool.low = low;
  pool.mean = pool.capacity / (high - low);
  // What a step put in past the top pushes back at once.
  if (pool.full) pool.level += Math.max(0, volume - pool.capacity) / (STANDPIPE * pool.mean);
};

/** Turns some cells of an oriented body to a direction of their own; `up` of the body as a whole is not kept. */
export const orientCells = (o: Oriented, cells: readonly number[], up: Float64Array): void => {
  const { points, areas, firstPoint, firstTriangle } = o.body;
  const { heights, weights, low, high } = o;
  const [x, y, z] = [up[0] as number, up[1] as number, up[2] as number];
  for (let k = 0; k < cells.length; k++) {
    const c = cells[k] as number;
    const lastPoint = firstPoint[c + 1] as number;
    let lo = Number.POSITIVE_INFINITY;
    let hi = Number.NEGATIVE_INFINITY;
    for (let i = firstPoint[c] as number, j = 3 * i; i < lastPoint; i++, j += 3) {
      const h = (points[j] as number) * x + (points[j + 1] as number) * y + (points[j + 2] as number) * z;
      heights[i] = h;
      if (h < lo) lo = h;
      if (h > hi) hi = h;
    }
    low[c] = lo;
    high[c] = hi;
    const lastTriangle = firstTriangle[c + 1] as number;
    for (let i = firstTriangle[c] as number, j = 3 * i; i < lastTriangle; i++, j += 3)
      weights[i] = -((areas[j] as number) * x + (areas[j + 1] as number) * y + (areas[j + 2] as number) * z);
  }
};
