import { freeze, type Vec3 } from '../numeric/index.js';
import type { OilSystem } from './answer.js';
import { AT_REST, attitudeOf } from './attitude.js';
import { createOriented, orient } from './body.js';
import { drainHeights } from './drain.js';
import { createMeasure, measureCells } from './level.js';
import { sillsOf } from './ways.js';

/** Air that cannot rise to the crankcase as the pan fills, at rest in the installed tilt. */
export interface TrappedAir {
  /** mm³ */
  readonly volume: number;
  /** Highest point of the largest pocket, where a vent hole would let it out; null when there is none. */
  readonly at: Vec3 | null;
}

/**
 * Air rises as oil drains, so this is the hollows of the pan turned upside down: seen along −up, a space
 * that does not drain to the crankcase holds air to the level of the highest opening that lets it out.
 */
export const trappedAir = (system: OilSystem): TrappedAir => {
  const { model, body, ways } = system;
  const up = attitudeOf(model.design, AT_REST).up;
  const o = orient(createOriented(body), [-up[0], -up[1], -up[2]]);
  const sills = sillsOf(ways.rest, o, new Float64Array(ways.rest.list.length));
  const open = model.cells.findIndex((cell) => cell.zone === 'crankcase');
  const drain = drainHeights(ways.rest, sills, open, body.cellCount);
  const out = createMeasure();
  let [volume, largest, at] = [0, 0, null as Vec3 | null];
  model.cells.forEach((cell, c) => {
    if (cell.zone === 'crankcase') return;
    const v = measureCells(o, [c], drain[c] as number, out).volume;
    volume += v;
    if (v <= largest) return;
    largest = v;
    at = cell.faces
      .flatMap((f) => f.loop)
      .reduce((a, b) =>
        a[0] * up[0] + a[1] * up[1] + a[2] * up[2] >= b[0] * up[0] + b[1] * up[1] + b[2] * up[2] ? a : b,
      );
  });
  return freeze({ volume, at: volume > 1 ? at : null });
};
