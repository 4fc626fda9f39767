import { PanError } from '../errors/index.js';
import {
  add3,
  cross3,
  dot3,
  freeze,
  length3,
  scale3,
  subtract3,
  unit3,
  type Vec3,
} from '../numeric/index.js';
import table from './tube-bend.json' with { type: 'json' };

/** Centre-line radius of a bend when none is told, in outside diameters. */
export const BEND_RADIUS = table.radius.value;

/** One bend of a tube as a bender takes it: feed so far, turn the tube, bend. */
export interface TubeStep {
  /** Straight tube before the bend, from the mouth or from the end of the last bend, mm. */
  readonly length: number;
  /** Turn of the tube about itself since the last bend, radians, −π to π; clockwise seen along it from the mouth. */
  readonly rotation: number;
  /** How far the tube is bent, radians. */
  readonly angle: number;
}

/** A stretch of a tube without a bend, mm. */
export interface TubeStraight {
  readonly from: Vec3;
  readonly to: Vec3;
  /** How far along the tube from the mouth it begins. */
  readonly along: number;
}

/** The bends of a tube in order, lengths in mm. */
export interface TubeList {
  readonly steps: readonly TubeStep[];
  /** Straight tube after the last bend, mm. */
  readonly last: number;
  /** Length to cut, along the centre line, mm. */
  readonly cut: number;
  readonly straights: readonly TubeStraight[];
  /** Middle of the longest straight, for a stay, and how far along the tube from the mouth it lies, mm. */
  readonly stay: { readonly at: Vec3; readonly along: number };
}

/** Corners turning less than this are none, radians. */
const STRAIGHT = 1e-6;

/**
 * A tube through points as a bend list, every corner an arc of the given centre-line radius between tangent
 * points R·tan(θ/2) from it. Plane geometry in each bend's own plane.
 *
 * @throws PanError `shape-fold` where two bends need more length than lies between their corners
 */
export const tubeBends = (route: readonly Vec3[], radius: number): TubeList => {
  const points = route.filter((p, i) => i === 0 || length3(subtract3(p, route[i - 1]!)) > STRAIGHT);
  const legs = points.slice(1).map((p, i) => subtract3(p, points[i]!));
  const ways = legs.map(unit3);
  const turns = ways.slice(1).map((way, i) => {
    const normal = cross3(ways[i]!, way);
    const angle = Math.atan2(length3(normal), dot3(ways[i]!, way));
    return { normal, angle, setback: angle < STRAIGHT ? 0 : radius * Math.tan(angle / 2) };
  });
  const lengths = legs.map((leg, i) => {
    const left = length3(leg) - (turns[i - 1]?.setback ?? 0) - (turns[i]?.setback ?? 0);
    if (left >= 0) return left;
    throw new PanError({
      code: 'shape-fold',
      path: ['pickup', 'route'],
      message: `The bends at the ends of the tube’s ${length3(leg).toFixed(0)} mm run ${i + 1} need ${(length3(leg) - left).toFixed(0)} mm at a radius of ${radius.toFixed(0)} mm.`,
      value: length3(leg),
      limit: length3(leg) - left,
      unit: 'mm',
      advice: 'Move those points of the route apart, or leave one out.',
    });
  });
  const steps: TubeStep[] = [];
  let [length, along, plane]: [number, number, Vec3 | null] = [0, 0, null];
  let stay = { at: points[0]!, along: 0, room: -1 };
  const straights: TubeStraight[] = [];
  lengths.forEach((straight, i) => {
    const before = turns[i - 1]?.setback ?? 0;
    const on = (far: number): Vec3 => add3(points[i]!, scale3(ways[i]!, before + far));
    straights.push({ from: on(0), to: on(straight), along });
    if (straight > stay.room) stay = { at: on(straight / 2), along: along + straight / 2, room: straight };
    length += straight;
    along += straight;
    const turn = turns[i];
    if (turn === undefined || turn.angle < STRAIGHT) return;
    const normal = unit3(turn.normal);
    const rotation =
      plane === null ? 0 : Math.atan2(dot3(cross3(plane, normal), ways[i]!), dot3(plane, normal));
    steps.push({ length, rotation, angle: turn.angle });
    along += radius * turn.angle;
    [length, plane] = [0, normal];
  });
  return freeze({ steps, last: length, cut: along, straights, stay: { at: stay.at, along: stay.along } });
};
