import { dot3, unit3 } from '../numeric/index.js';
import type { OilSystem } from './answer.js';
import { AT_REST, attitudeOf } from './attitude.js';

/**
 * How steeply the shallow's floor falls to the sump in the installed tilt: the least over its pieces, radians,
 * negative where one falls away from it; null without a shallow or where the tilt is not known.
 */
export const shallowFall = ({ model }: OilSystem): number | null => {
  const { design, sumpFront } = model;
  if (design.engine.tilt === null) return null;
  const { up } = attitudeOf(design, AT_REST);
  const { floor } = design.pan;
  const falls = floor.slice(1).flatMap(([x, down], i) => {
    const [ahead, before] = floor[i] as readonly [number, number];
    if (!(ahead > x && x >= sumpFront)) return [];
    return [Math.asin(-dot3(up, unit3([x - ahead, 0, before - down])))];
  });
  return falls.length === 0 ? null : Math.min(...falls);
};
