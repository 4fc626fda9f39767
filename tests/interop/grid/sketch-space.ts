import type { Sketch, SketchDoor, SketchLid, SketchWall } from './sketch.js';
import type { Passage, Point, Screen, Space } from './space.js';

type Flat = readonly [number, number];

/** mm between the chords of a fold’s arc and the arc: far finer than any cube. */
const CHORD = 0.002;

/** The floor from the rail at the front to the rail at the rear, [x, z], folds as fine chords. */
export const floorLine = (sketch: Sketch): readonly Flat[] => {
  const front = sketch.floor[0] as Flat;
  const rear = sketch.floor[sketch.floor.length - 1] as Flat;
  const sharp: Flat[] = [[front[0], 0], ...sketch.floor.map(([x, down]): Flat => [x, -down]), [rear[0], 0]];
  if (!sketch.folded) return sharp;
  const line: Flat[] = [sharp[0] as Flat];
  for (let i = 1; i + 1 < sharp.length; i++) {
    line.push(...rounded(sharp[i - 1] as Flat, sharp[i] as Flat, sharp[i + 1] as Flat, sketch));
  }
  return [...line, sharp[sharp.length - 1] as Flat];
};

const rounded = (before: Flat, at: Flat, after: Flat, { radius, thickness }: Sketch): readonly Flat[] => {
  const heading = (a: Flat, b: Flat): number => Math.atan2(b[1] - a[1], b[0] - a[0]);
  const first = heading(before, at);
  let turn = heading(at, after) - first;
  if (turn > Math.PI) turn -= 2 * Math.PI;
  if (turn < -Math.PI) turn += 2 * Math.PI;
  if (Math.abs(turn) < 1e-9) return [at];
  // Going rearward the oil is on the right, so a right turn has the oil inside the bend.
  const bend = turn < 0 ? radius : radius + thickness;
  const back = bend * Math.tan(Math.abs(turn) / 2);
  const start: Flat = [at[0] - back * Math.cos(first), at[1] - back * Math.sin(first)];
  const side = Math.sign(turn);
  const middle: Flat = [start[0] - side * bend * Math.sin(first), start[1] + side * bend * Math.cos(first)];
  const count = Math.ceil(Math.abs(turn) / (2 * Math.acos(1 - CHORD / bend)));
  return Array.from({ length: count + 1 }, (_, i): Flat => {
    const angle = first + (turn * i) / count;
    return [middle[0] + side * bend * Math.sin(angle), middle[1] - side * bend * Math.cos(angle)];
  });
};

/** Height of the floor at x, or null beyond its ends. At a shoulder the higher side counts. */
const floorAt = (line: readonly Flat[]): ((x: number) => number | null) => {
  const pieces = line.flatMap((a, i) => {
    const b = line[i + 1];
    return b === undefined || b[0] >= a[0] ? [] : [{ x0: b[0], z0: b[1], x1: a[0], z1: a[1] }];
  });
  return (x) => {
    let found: number | null = null;
    for (const { x0, z0, x1, z1 } of pieces) {
      if (x < x0 || x > x1) continue;
      const z = z0 + ((z1 - z0) * (x - x0)) / (x1 - x0);
      found = found === null ? z : Math.max(found, z);
    }
    return found;
  };
};

/**
 * Beside a lid, as far as the next wall or fold, the room is parted along the lid's plane too: what runs down there
 * runs along it.
 */
const lidScreen = (lid: SketchLid, sketch: Sketch): Screen => {
  const line = floorLine(sketch);
  const [step] = sketch.floor[sketch.floor.length - 2] as Flat;
  const folds = line.map(([x]) => x).filter((x) => x <= step);
  const ends = [...sketch.walls.filter((wall) => wall.top <= lid.down).map((wall) => wall.at), ...folds];
  const from = Math.max(...ends.filter((x) => x <= lid.rear));
  const to = Math.min(...ends.filter((x) => x >= lid.front));
  return {
    axis: 2,
    at: -lid.down,
    thickness: 0,
    passage: ([x, y]): Passage => {
      if (x < from || x > to) return 'none';
      if (x < lid.rear || x > lid.front) return 'edge';
      return lid.holes.some(([at, diameter]) => Math.hypot(x - at, y) < diameter / 2) ? 'hole' : 'solid';
    },
  };
};

/** Doors and holes are placed along y by `sketch-design` too: see DOOR_WIDTH. */
export const DOOR_WIDTH = 30;

const wallScreen = (wall: SketchWall, floor: (x: number) => number | null, prismatic: boolean): Screen => {
  const foot = floor(wall.at) ?? 0;
  const inDoor = (door: SketchDoor, y: number, z: number): boolean =>
    (prismatic || Math.abs(y) < DOOR_WIDTH / 2) && z > foot + door.up && z < foot + door.up + door.height;
  return {
    axis: 0,
    at: wall.at,
    thickness: 0,
    passage: ([, y, z]): Passage => {
      if (z > -wall.top) return 'none';
      if (z < foot + wall.weep) return 'weep';
      const door = wall.doors.find((one) => inDoor(one, y, z));
      if (door !== undefined) return door.lets;
      const across = prismatic ? 0 : y;
      const hole = wall.holes.some(([down, diameter]) => Math.hypot(across, z + down) < diameter / 2);
      return hole ? 'hole' : 'solid';
    },
  };
};

/** The sketch as a grid sees it. */
export const spaceOf = (sketch: Sketch, gap: number, mouthRoom: Space['mouthRoom']): Space => {
  const floor = floorAt(floorLine(sketch));
  const prismatic =
    sketch.wings.length === 0 && sketch.path.every((one) => one.left === 0) && sketch.attitude.leanLeft === 0;
  const half = (x: number): number =>
    sketch.halfWidths.rear + ((sketch.halfWidths.front - sketch.halfWidths.rear) * x) / sketch.length;
  const inWing = ([x, y, z]: Point): boolean =>
    sketch.wings.some(
      (wing) =>
        x > wing.rear &&
        x < wing.front &&
        z < -wing.top &&
        (wing.side === 'left' ? y : -y) >= half(x) &&
        (wing.side === 'left' ? y : -y) < half(x) + wing.beyond,
    );
  const inside = (point: Point): boolean => {
    const [x, y, z] = point;
    if (z >= 0) return z < sketch.top && x > 0 && x < sketch.length && Math.abs(y) < sketch.width / 2;
    const bottom = floor(x);
    return bottom !== null && z > bottom && (Math.abs(y) < half(x) || inWing(point));
  };
  const deepest = Math.max(...sketch.floor.map(([, down]) => down));
  const grow = (value: number): number => Math.ceil(value / 16) * 16;
  const reach = Math.max(0, ...sketch.wings.map((wing) => wing.beyond));
  const side = prismatic ? sketch.width / 2 : grow(sketch.width / 2 + reach);
  return {
    min: [0, -side, -grow(deepest)],
    max: [grow(sketch.length), side, grow(sketch.top)],
    prismatic,
    inside,
    share: ([, , z]) => (z < 0 ? 1 : 1 - sketch.displaced),
    screens: [
      ...sketch.lids.map((lid) => lidScreen(lid, sketch)),
      ...sketch.walls.map((wall) => wallScreen(wall, floor, prismatic)),
    ],
    mouth: [sketch.mouthAt, 0, (floor(sketch.mouthAt) ?? 0) + gap],
    mouthRoom,
  };
};
