import { dot3, unit3, type Vec3 } from '../numeric/index.js';
import { formedFloor } from '../pan/index.js';
import type { OilSystem } from './answer.js';
import { AT_REST, attitudeOf } from './attitude.js';
import { createOriented, heightOf, orient } from './body.js';
import { drainHeights } from './drain.js';
import { createMeasure, measureCells } from './level.js';
import { cellsAt } from './plumb.js';
import { sillsOf } from './ways.js';

/** Height above a point of the floor at which the room over it is looked for, mm. */
const JUST_OVER = 1e-3;

/**
 * Oil left in the pan when the plug is out, the car standing in the installed tilt and every door and weep open, mm³:
 * what lies under the lowest edge of the plug's hole, flush with the floor, and behind lips that do not run to it.
 * null without a drain, or where its hole is not in a floor.
 */
export const undrained = ({ model, body, ways }: OilSystem): number | null => {
  const { drain } = model.design;
  if (drain === null) return null;
  const up = attitudeOf(model.design, AT_REST).up;
  const hole = holeAt(model.profile, drain.at);
  const [cell] = hole === null ? [] : cellsAt(model, [hole.at[0], hole.at[1], hole.at[2] + JUST_OVER]);
  if (hole === null || cell === undefined) return null;
  const o = orient(createOriented(body), up);
  const sills = sillsOf(ways.rest, o, new Float64Array(ways.rest.list.length));
  const drains = drainHeights(ways.rest, sills, cell, body.cellCount);
  // The floor falls across the hole: its lowest edge drains last.
  const fall = (drain.thread.diameter / 2) * Math.hypot(dot3(up, hole.along), up[1]);
  const rim = heightOf(o, hole.at) - fall;
  const out = createMeasure();
  return drains.reduce((sum, d, c) => sum + measureCells(o, [c], Math.max(d, rim), out).volume, 0);
};

/** The place of the hole on the floor and the floor's direction there, along the pan. */
const holeAt = (
  profile: OilSystem['model']['profile'],
  [x, y]: readonly [number, number],
): { readonly at: Vec3; readonly along: Vec3 } | null => {
  const piece = formedFloor(profile).find(({ x0, x1 }) => x >= x0 && x <= x1);
  if (piece === undefined) return null;
  const { x0, x1, down0, down1 } = piece;
  const down = down0 + ((down1 - down0) * (x - x0)) / (x1 - x0);
  return { at: [x, y, -down], along: unit3([x1 - x0, 0, down0 - down1]) };
};
