import { freeze } from '../numeric/index.js';
import { type OilSystem, restAnswer } from './answer.js';

export interface DepthRow {
  /** Oil in the pan, mm³. */
  readonly volume: number;
  /** Depth of its surface below the rail at the mouth's centre, mm. */
  readonly surface: number;
}

/** Rest levels in the installed tilt for every `step` mm³ up to `most`. */
export const depthTable = (system: OilSystem, step: number, most: number): readonly DepthRow[] => {
  const rows: DepthRow[] = [];
  for (let volume = step; volume <= most + step * 1e-9; volume += step) {
    const mouth = restAnswer(system, volume).pools.find((p) => p.hasPickup);
    if (mouth !== undefined) rows.push({ volume, surface: mouth.surface });
  }
  return freeze(rows);
};
