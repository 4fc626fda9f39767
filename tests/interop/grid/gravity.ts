import type { Point } from './space.js';

/** Angles in radians, accelerations in g; body angles are per g. */
export interface Attitude {
  readonly noseUp: number;
  readonly leanLeft: number;
  readonly grade: number;
  readonly rollPerG: number;
  readonly divePerG: number;
}

export interface Acceleration {
  readonly forward: number;
  readonly left: number;
}

/**
 * Unit vector against effective gravity in pan axes.
 *
 * Word by word: oil goes against the acceleration; uphill sends it rearward; braking dives the nose, which sends it
 * forward; a left turn leans the body right, which sends it right; nose up sends it rearward, lean left sends it left.
 */
export const upOf = (attitude: Attitude, { forward, left }: Acceleration): Point => {
  let x = -Math.sin(attitude.grade) - forward;
  let y = -left;
  let z = -Math.cos(attitude.grade);
  const turn = (a: number, b: number, angle: number): [number, number] => [
    a * Math.cos(angle) - b * Math.sin(angle),
    a * Math.sin(angle) + b * Math.cos(angle),
  ];
  [x, z] = turn(x, z, -attitude.divePerG * forward);
  [y, z] = turn(y, z, -attitude.rollPerG * left);
  [x, z] = turn(x, z, -attitude.noseUp);
  [y, z] = turn(y, z, attitude.leanLeft);
  const size = Math.hypot(x, y, z);
  return [-x / size, -y / size, -z / size];
};
