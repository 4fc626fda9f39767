import type { Design, Mounts } from '../design/index.js';
import { NO_ROTATION, type Rotation, rotate3, tiltedToLevel } from '../geometry/index.js';
import { subtract3, type Vec3 } from '../numeric/index.js';
import practice from './practice.json' with { type: 'json' };

/** Where the engine stands in the car, from where the design has it: turned about the chassis's origin, then moved. */
export interface Stance {
  readonly turn: Rotation;
  readonly shift: Vec3;
}

export const AT_REST: Stance = Object.freeze({ turn: NO_ROTATION, shift: [0, 0, 0] as const });

/** What a jack raises, and on what it turns then. */
export type JackName =
  | 'lifted level'
  | 'nose raised'
  | 'gearbox end raised'
  | 'left side raised'
  | 'right side raised';

/** One way of raising the engine with a jack: all of it, or one mounting while it turns on another. */
export interface Jack {
  readonly name: JackName;
  /** @param raised How far the jack raises what it stands under, mm. */
  readonly stance: (raised: number) => Stance;
  /** How far the engine is turned then, radians, without sign. */
  readonly turned: (raised: number) => number;
  /**
   * The raise up to which nothing of the engine that lies within `reach` of what it turns on moves by more than
   * `room` from where it stood at `raised`, mm.
   */
  readonly further: (raised: number, room: number) => number;
  /** The most that is looked at, mm. */
  readonly most: number;
}

/** The most an engine is raised, mm, and turned, radians. */
const MOST_RAISE = 150;
const MOST_TURN = (12 * Math.PI) / 180;

/**
 * The mountings of the design, or where they commonly are: at half the block's length beside the rail, the gearbox's
 * well behind the block, all at the crank's height.
 */
export const mountsOf = ({ engine }: Design): { readonly mounts: Mounts; readonly given: boolean } => {
  if (engine.mounts !== null) return { mounts: engine.mounts, given: true };
  const [xs, ys] = [engine.rail.outline.map((p) => p[0]), engine.rail.outline.map((p) => p[1])];
  const x = (Math.min(...xs) + Math.max(...xs)) / 2;
  const z = engine.crank?.centreAboveRail ?? 0;
  return {
    mounts: {
      left: [x, Math.max(...ys) + practice.mountBesideRail, z],
      right: [x, Math.min(...ys) - practice.mountBesideRail, z],
      gearbox: [-practice.gearboxMountBehind, 0, z],
    },
    given: false,
  };
};

/**
 * Every way of raising the engine that is looked at.
 *
 * @param corners Of all that is raised, in the engine's axes.
 */
export const jacksOf = (
  { left, right, gearbox }: Mounts,
  toChassis: Rotation,
  corners: readonly Vec3[],
): readonly Jack[] => {
  const middle: Vec3 = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2, (left[2] + right[2]) / 2];
  const inCar = (p: Vec3): Vec3 => rotate3(toChassis, p);
  const points = corners.map(inCar);
  const about = (name: JackName, under: Vec3, on: Vec3, axis: 0 | 1): readonly Jack[] =>
    turnedJack(name, inCar(under), inCar(on), axis, points);
  return [
    {
      name: 'lifted level',
      stance: (raised) => ({ turn: NO_ROTATION, shift: [0, 0, raised] }),
      turned: () => 0,
      further: (raised, room) => raised + room,
      most: MOST_RAISE,
    },
    ...about('nose raised', middle, gearbox, 1),
    ...about('gearbox end raised', gearbox, middle, 1),
    ...about('left side raised', left, right, 0),
    ...about('right side raised', right, left, 0),
  ];
};

/** None where the two mountings do not stand apart. */
const turnedJack = (
  name: JackName,
  under: Vec3,
  on: Vec3,
  axis: 0 | 1,
  points: readonly Vec3[],
): readonly Jack[] => {
  const across = axis === 0 ? 1 : 0;
  const [out, up] = [under[across] - on[across], under[2] - on[2]];
  const arm = Math.hypot(out, up);
  if (Math.abs(out) < arm / 2 || arm === 0) return [];
  // The jack's place stands at this angle over what it turns on; it rises by arm·(sin(start + turn) − sin(start)).
  const start = Math.atan2(up, Math.abs(out));
  const rise = (turned: number): number => arm * (Math.sin(start + turned) - Math.sin(start));
  const most = Math.min(MOST_RAISE, rise(Math.min(MOST_TURN, Math.PI / 2 - start)));
  const turned = (raised: number): number => Math.asin(Math.min(1, Math.sin(start) + raised / arm)) - start;
  const reach = Math.max(...points.map((p) => Math.hypot(p[across] - on[across], p[2] - on[2])));
  const sign = Math.sign(out);
  return [
    {
      name,
      turned,
      most,
      further: (raised, room) => rise(turned(raised) + room / reach),
      stance: (raised) => {
        const angle = sign * turned(raised);
        // A lean to the left takes the left side down.
        const turn = axis === 1 ? tiltedToLevel(angle, 0) : tiltedToLevel(0, -angle);
        return { turn, shift: subtract3(on, rotate3(turn, on)) };
      },
    },
  ];
};
