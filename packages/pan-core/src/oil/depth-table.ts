import { freeze } from '../numeric/index.js';
import { depthUnder, type OilSystem } from './answer.js';
import { restLevels } from './rest.js';

/** One line of a depth table: mm of depth and mm³ of oil. */
export interface DepthRow {
  /** Oil in the pan, mm³. */
  readonly volume: number;
  /** Depth of its surface below the rail at the mouth's centre, mm. */
  readonly surface: number;
}

/** Rest levels in the installed tilt for rising volumes, mm³. */
export const depthTable = (
  { model, basin }: Pick<OilSystem, 'model' | 'basin'>,
  volumes: readonly number[],
): readonly DepthRow[] => {
  const levels = restLevels(basin, volumes);
  return freeze(
    volumes.map((volume, i) => ({
      volume,
      surface: depthUnder(basin.oriented, model.mouth, levels[i] as number),
    })),
  );
};
