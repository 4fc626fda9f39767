import { unit3 } from '../../numeric/index.js';
import type { Chassis, Obstacle, Plane, Point3, ScanUnit, Suspension } from '../design.js';
import type { Place } from '../field/index.js';
import type { DesignKeys } from '../keys/design-keys.js';
import { scanOf } from '../scan-placement.js';
import { boxOf, rodOf } from './engine.js';
import type { Notes } from './notes.js';

type ChassisKeys = NonNullable<DesignKeys['chassis']>;
type ObstacleKeys = NonNullable<ChassisKeys['obstacles']>[number];
type PlaneKeys = NonNullable<ObstacleKeys['plane']>;

export const resolveChassis = (keys: ChassisKeys | undefined, notes: Notes): Chassis => {
  const path = ['chassis'];
  const axes = keys?.axes ?? null;
  const ground = keys?.ground ?? null;
  const obstacles = (keys?.obstacles ?? []).map((obstacle, i) => resolveObstacle(obstacle, i, notes));
  if (axes === null && (ground !== null || obstacles.length > 0)) {
    notes.lack(
      [...path, 'axes'],
      'whether chassis points are in car or pan axes',
      'how far the pan is from the car',
    );
  }
  if (keys?.ground === null)
    notes.lack([...path, 'ground'], 'where the road is', 'whether the pan meets the road');
  const moves = keys?.engine_moves;
  const movesPath = [...path, 'engine_moves'];
  const body = keys?.body;
  return {
    axes,
    ground,
    groundPlusMinus:
      ground === null
        ? 0
        : notes.take(keys?.ground_plus_minus, [...path, 'ground_plus_minus'], 'length', 'plus or minus'),
    suspension: suspensionOf(keys?.suspension, notes),
    moves: {
      rock: notes.take(moves?.rock, [...movesPath, 'rock'], 'angle', 'engine rock'),
      up: notes.take(moves?.up, [...movesPath, 'up'], 'length', 'engine up'),
      down: notes.take(moves?.down, [...movesPath, 'down'], 'length', 'engine down'),
      foreAft: notes.take(moves?.fore_aft, [...movesPath, 'fore_aft'], 'length', 'engine fore and aft'),
    },
    body: {
      rollPerG: notes.take(body?.roll_per_g, [...path, 'body', 'roll_per_g'], 'angle per g', 'roll per g'),
      divePerG: notes.take(body?.dive_per_g, [...path, 'body', 'dive_per_g'], 'angle per g', 'dive per g'),
    },
    obstacles,
  };
};

const suspensionOf = (keys: ChassisKeys['suspension'], notes: Notes): Suspension | null => {
  if (keys === undefined) return null;
  const droop = (end: 'front' | 'rear', bump: number, given: number | undefined): number => {
    if (given !== undefined) return given;
    notes.assume(
      ['chassis', 'suspension', `droop_${end}`],
      `${bump} mm`,
      `common practice, no source: as far up as down`,
    );
    return bump;
  };
  return {
    frontAxle: keys.front_axle,
    rearAxle: keys.rear_axle,
    bumpFront: keys.bump_front,
    bumpRear: keys.bump_rear,
    droopFront: droop('front', keys.bump_front, keys.droop_front),
    droopRear: droop('rear', keys.bump_rear, keys.droop_rear),
  };
};

const resolveObstacle = (keys: ObstacleKeys, index: number, notes: Notes): Obstacle => {
  const path = ['chassis', 'obstacles', index];
  return {
    name: keys.name,
    shape: shapeOf(keys, path, notes),
    clear: notes.take(keys.clear, [...path, 'clear'], 'length', 'clear'),
    plusMinus: notes.take(keys.plus_minus, [...path, 'plus_minus'], 'length', 'plus or minus'),
  };
};

const shapeOf = (keys: ObstacleKeys, path: Place, notes: Notes): Obstacle['shape'] => {
  const { box, rod, diameter, travel, positions, plane, prism, scan, unit, placement } = keys;
  if (box !== undefined) return boxOf(box);
  if (rod !== undefined) return rodOf(rod, diameter as number, travel, positions);
  if (prism !== undefined) {
    const { from, to } = prism;
    return { ...prism, kind: 'prism', from: Math.min(from, to), to: Math.max(from, to) };
  }
  if (scan !== undefined) {
    return scanOf(scan, notes.takeWord<ScanUnit>(unit, [...path, 'unit'], 'scan unit'), placement);
  }
  return planeOf(plane as PlaneKeys);
};

const FACING: Readonly<Record<NonNullable<PlaneKeys['facing']>, Point3>> = {
  down: [0, 0, -1],
  up: [0, 0, 1],
  front: [1, 0, 0],
  rear: [-1, 0, 0],
  left: [0, 1, 0],
  right: [0, -1, 0],
};

/**
 * A surface that falls by φ toward the front runs along (cos φ, 0, −sin φ), so its upper face looks along
 * (sin φ, 0, cos φ) and its lower face the other way.
 */
const planeOf = ({ at, facing, falls_forward, normal }: PlaneKeys): Plane => {
  if (normal !== undefined) return { kind: 'plane', at, normal: unit3(normal) };
  if (facing === undefined) throw new Error('a plane has neither facing nor normal');
  if (falls_forward === undefined) return { kind: 'plane', at, normal: FACING[facing] };
  const sign = facing === 'up' ? 1 : -1;
  return { kind: 'plane', at, normal: [sign * Math.sin(falls_forward), 0, sign * Math.cos(falls_forward)] };
};
