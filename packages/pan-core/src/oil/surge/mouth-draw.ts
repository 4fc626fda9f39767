import type { Vec3 } from '../../numeric/index.js';
import { orientCells, poolOfCell, type SurgePool, type SurgeScene } from './surge-scene.js';

/** The mouth goes from all oil to all air over at least this much of its own height, mm. */
const LEAST_RIM = 2;

/** Height of the mouth's centre along a pool's up, and how far its rim reaches above and below it; mm. */
const rim = (scene: SurgeScene, up: Float64Array): { readonly top: number; readonly reach: number } => {
  const { model, body } = scene.net.system;
  const { centre, radius } = model.mouth;
  const [x, y, z] = [up[0] as number, up[1] as number, up[2] as number];
  const [cx, cy, cz] = [centre[0] - body.origin[0], centre[1] - body.origin[1], centre[2] - body.origin[2]];
  const reach = radius * Math.hypot(x, y);
  return { top: cx * x + cy * y + cz * z + reach, reach };
};

/** Share of the pump's flow that is oil, 0–1: all of it while the whole rim is covered. */
export const drawShare = (scene: SurgeScene, pool: SurgePool): number => {
  if (pool.dry) return 0;
  const { top, reach } = rim(scene, pool.up);
  const band = Math.max(LEAST_RIM, 2 * reach);
  return Math.min(1, Math.max(0, (pool.level - top + band) / band));
};

/** Least depth of the mouth's rim below its own pool's surface at the levels last set, mm; negative when bared. */
export const mouthCover = (scene: SurgeScene): number => {
  const { cell } = scene.net.system.model.mouth;
  const pool = poolOfCell(scene, cell);
  const { top } = rim(scene, pool.up);
  if (!pool.dry) return pool.level - top;
  orientCells(scene.oriented, [cell], pool.up);
  return (scene.oriented.low[cell] as number) - top;
};

/** A point in pan axes as the mouth's pool sees it: depth below its surface, mm. */
export const depthBelow = (scene: SurgeScene, pool: SurgePool, p: Vec3): number => {
  const { origin } = scene.net.system.body;
  const { up } = pool;
  return (
    pool.level -
    ((up[0] as number) * (p[0] - origin[0]) +
      (up[1] as number) * (p[1] - origin[1]) +
      (up[2] as number) * (p[2] - origin[2]))
  );
};
