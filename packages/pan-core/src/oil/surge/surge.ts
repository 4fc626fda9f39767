import type { Assumption } from '../../design/index.js';
import { PanError } from '../../errors/index.js';
import { createDormandPrince, findRoot, freeze, stepFactor } from '../../numeric/index.js';
import type { OilSystem } from '../answer.js';
import { createCoverLog, type MouthCover } from './cover-log.js';
import type { LoadPath } from './load-path.js';
import { mouthCover } from './mouth-draw.js';
import { namedRooms } from './named-room.js';
import { createNet } from './network.js';
import { type PassageFlow, passageFlows } from './passage-flow.js';
import { relink } from './pool-links.js';
import { returnSpots } from './return-spot.js';
import { type SurgeOptions, type SurgeSettings, settingsFor } from './settings.js';
import { startState } from './start.js';
import { stepError } from './step-error.js';
import { createRates } from './surge-rates.js';
import {
  createSurgeScene,
  POOL_SIZE,
  poolOfCell,
  type SurgeScene,
  stateSize,
  TRANSIT,
} from './surge-scene.js';
import { createRecorder, type SurgeSeries } from './surge-series.js';
import { createSwingCheck } from './swing.js';

/** One run of oil through time. */
export interface SurgeRun {
  readonly series: SurgeSeries;
  readonly cover: MouthCover;
  readonly passages: readonly PassageFlow[];
  /** First-mode period of the mouth's pool at the start, the longer of its two, s; null without a surface. */
  readonly period: number | null;
  /** false where the load lasts less than one such period: slosh is then not solved by a tilting surface. */
  readonly resolved: boolean;
  /** false: stopped by `progress`; the series ends there. */
  readonly finished: boolean;
  /** Oil at the end less oil at the start, engine included, as a share of it. */
  readonly drift: number;
  /** How often the run went one step on. */
  readonly steps: number;
  readonly assumed: readonly Assumption[];
}

const LONGEST_STEP = 0.25;
const SHORTEST_STEP = 1e-6;
/** How closely a moment is found, s. */
const CLOSE = 1e-7;
const MOST_ROWS = 2000;
const LEAST_ROW = 0.02;
/** Accepted steps between two calls of `progress`. */
const PROGRESS_EVERY = 64;

/**
 * Follows the oil through a load over time: pools that open water joins are one at once, everything else lets
 * oil through at its own rate, surfaces swing after the load with their first mode, the pump draws and the
 * engine gives back. Oil is conserved, the oil on its way through the engine included.
 *
 * Not modelled: waves inside a pool beyond one tilting plane, oil thrown off walls, air drawn into oil, froth.
 *
 * @throws PanError `oil-quantity` when the oil does not fit, `input-range` for a return point outside the pan
 */
export const surge = (system: OilSystem, path: LoadPath, options: SurgeOptions = {}): SurgeRun => {
  const settings = settingsFor(system.model.design, options);
  const scene = createSurgeScene(createNet(system), settings, path);
  const y = startState(scene);
  const { slope, levels } = createRates(scene, returnSpots(system.model, settings.returnTo));
  const every = options.every ?? Math.max(LEAST_ROW, path.seconds / MOST_ROWS);
  const rows = Math.floor(path.seconds / every + 1e-9) + 1;
  const recorder = createRecorder(scene, namedRooms(system.model), rows);
  const log = createCoverLog();
  const swing = createSwingCheck(scene);
  const before = oilIn(scene, y);
  const method = createDormandPrince(stateSize(scene));
  const at = new Float64Array(stateSize(scene));

  let [t, h, lastError, row, steps, looks] = [0, 0.01, 1, 0, 0, 0];
  let finished = true;
  const look = (time: number): number => {
    looks++;
    method.between((time - t) / h, at);
    levels(time, at);
    return mouthCover(scene);
  };
  const crossing = (from: number, to: number): number => {
    const found = findRoot(look, from, to, CLOSE);
    return Number.isNaN(found) ? to : found;
  };
  /** Rows and cover of the step just made, whose end the levels are set for, and are again afterwards. */
  const record = (end: number): void => {
    const last = mouthCover(scene);
    const calls = looks;
    while (row < rows && row * every <= end) {
      const cover = look(row * every);
      recorder.add(row * every, at);
      log.note(row * every, cover, crossing);
      row++;
    }
    log.note(end, last, crossing);
    if (looks !== calls) levels(end, method.end);
  };
  /** Hands thin cells to bays anew and lets swings follow the surfaces. */
  const settle = (): void => {
    const { up } = poolOfCell(scene, system.model.mouth.cell);
    const moved = scene.owner.find(up[0] as number, up[1] as number, up[2] as number);
    if (moved) {
      relink(scene, y);
      levels(t, y);
      log.jump(t, mouthCover(scene));
    }
    if (swing.renew(y) || moved) slope(t, y, method.first);
    else method.accept();
  };

  levels(0, y);
  swing.renew(y);
  const period = longer(swing.periods(poolOfCell(scene, system.model.mouth.cell)));
  recorder.add(0, y);
  row = 1;
  log.note(0, mouthCover(scene), () => 0);
  slope(0, y, method.first);
  const corners = [...path.corners, path.seconds];
  for (const corner of corners) {
    while (finished && t < corner) {
      const left = corner - t;
      const ends = h >= left * (1 - 1e-12);
      if (ends) h = left;
      method.attempt(slope, t, y, h);
      const error = stepError(scene, method);
      if (!(error <= 1) && h > SHORTEST_STEP) {
        h = Math.max(SHORTEST_STEP, h * stepFactor(error, lastError));
        continue;
      }
      if (Number.isNaN(error)) throw lost(t);
      record(t + h);
      const length = h;
      y.set(method.end);
      t = ends ? corner : t + h;
      settle();
      h = Math.min(LONGEST_STEP, length * stepFactor(error, lastError));
      lastError = error;
      steps++;
      if (options.progress !== undefined && steps % PROGRESS_EVERY === 0)
        finished = options.progress(t / path.seconds);
    }
  }
  const held = path.loadedUntil;
  return freeze({
    series: recorder.series(),
    cover: log.cover(t),
    passages: passageFlows(scene, y),
    period,
    resolved: period !== null && held >= period,
    finished,
    drift: before > 0 ? (oilIn(scene, y) - before) / before : 0,
    steps,
    assumed: settings.assumed,
  });
};

const longer = ([a, b]: readonly [number | null, number | null]): number | null =>
  a === null || b === null ? (a ?? b) : Math.max(a, b);

const lost = (t: number): PanError =>
  new PanError({
    code: 'internal',
    path: [],
    message: `The run lost its way at ${t.toFixed(4)} s: a volume is no number.`,
  });

/** Oil in the pan and on its way through the engine, mm³. */
const oilIn = (scene: SurgeScene, y: Float64Array): number => {
  let sum = 0;
  for (let s = 0; s < TRANSIT; s++) sum += y[s] as number;
  for (let p = 0; p < scene.pools.length; p++) sum += y[scene.firstPool + POOL_SIZE * p] as number;
  return sum;
};

export type { SurgeSettings };
