import type { Design, Load } from '../design/index.js';
import { unit3, type Vec3 } from '../numeric/index.js';

/** Effective gravity in pan axes, in g: `pull` points where oil goes, `up` is the unit vector against it. */
export interface Attitude {
  readonly load: Load;
  readonly pull: Vec3;
  readonly up: Vec3;
}

/** No load: the car stands on level ground. */
export const AT_REST: Load = Object.freeze({ forward: 0, left: 0, grade: 0 });

/** Nose-down turn about y: the front sinks, so pan x gains what points down in road axes. */
const noseDown = (v: Vec3, t: number): Vec3 => {
  const [c, s] = [Math.cos(t), Math.sin(t)];
  return [c * v[0] - s * v[2], v[1], s * v[0] + c * v[2]];
};

/** Lean-right turn about x: the right side sinks. */
const leanRight = (v: Vec3, t: number): Vec3 => {
  const [c, s] = [Math.cos(t), Math.sin(t)];
  return [v[0], c * v[1] + s * v[2], -s * v[1] + c * v[2]];
};

/**
 * g_pan = R_x(lean)·R_y(tilt)·R_x(roll)·R_y(pitch)·(grade·g − a), ISO 8855 axes: braking pitches the nose
 * down, a left turn leans to the right, both in proportion to the load; an uphill grade raises the nose.
 */
export const attitudeOf = (design: Design, load: Load): Attitude => {
  const { body } = design.chassis;
  const tilt = design.engine.tilt ?? { noseUp: 0, leanLeft: 0 };
  const road: Vec3 = [-Math.sin(load.grade) - load.forward, -load.left, -Math.cos(load.grade)];
  const inBody = leanRight(noseDown(road, -body.divePerG * load.forward), body.rollPerG * load.left);
  const pull = leanRight(noseDown(inBody, -tilt.noseUp), -tilt.leanLeft);
  return { load, pull, up: unit3([-pull[0], -pull[1], -pull[2]]) };
};

/** A load part of the way from one to another. */
export const between = (a: Load, b: Load, t: number): Load => ({
  forward: a.forward + (b.forward - a.forward) * t,
  left: a.left + (b.left - a.left) * t,
  grade: a.grade + (b.grade - a.grade) * t,
});
