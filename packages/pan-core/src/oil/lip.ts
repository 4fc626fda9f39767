import type { Vec3 } from '../numeric/index.js';
import type { OilSystem } from './answer.js';
import { heightOf } from './body.js';
import { DRY, type Pool, type PoolState, type Scene } from './pools.js';
import type { Way } from './ways.js';

/** The lowest way out of a pool. */
export interface Lip {
  /** In words a builder can find on the pan. */
  readonly name: string;
  readonly at: Vec3;
  /** How far the pool's surface stands below it, mm; 0 when it is full to the lip. */
  readonly below: number;
}

/** The lowest outer lip of the mouth's pool, or null when it has none. */
export const lipOf = (system: OilSystem, scene: Scene, state: PoolState, level: number): Lip | null => {
  const { model } = system;
  const mine = state.of[model.mouth.cell] as number;
  if (mine === DRY) return null;
  const pool = state.pools[mine] as Pool;
  let best: { w: number; sill: number } | null = null;
  for (const c of pool.cells)
    for (const w of scene.ways.at[c] as readonly number[]) {
      const way = scene.ways.list[w] as Way;
      if (state.of[way.from] === state.of[way.to]) continue;
      if (!way.both && state.of[way.from] !== mine) continue;
      const sill = scene.sills[w] as number;
      if (best === null || sill < best.sill) best = { w, sill };
    }
  if (best === null) return null;
  const opening = model.openings[(scene.ways.list[best.w] as Way).opening];
  if (opening === undefined) return null;
  const at = opening.pieces
    .flat()
    .reduce((a, b) => (heightOf(scene.oriented, a) <= heightOf(scene.oriented, b) ? a : b));
  return { name: nameOf(system, opening.label, at), at, below: Math.max(0, best.sill - level) };
};

/** Half the width over which a bend still counts as the step's lip, mm beyond its setback. */
const NEAR = 1;

const nameOf = (system: OilSystem, label: string, at: Vec3): string => {
  if (label !== '') return label;
  const { model } = system;
  const place = `x = ${at[0].toFixed(0)}`;
  if (at[2] > -1e-9) return `the rail at ${place}`;
  const corner = model.profile.corners.find(
    (c) =>
      c.turn < 0 &&
      Math.abs(c.at[0] - at[0]) <= c.setback + NEAR &&
      Math.abs(c.at[1] - at[2]) <= c.setback + NEAR,
  );
  if (corner !== undefined) return `the lip at x = ${corner.at[0].toFixed(0)}`;
  return `the opening at ${place}`;
};
