import type { Dice } from '../../dice.js';
import type { Acceleration, Attitude } from './gravity.js';

export interface SketchLid {
  readonly down: number;
  readonly rear: number;
  readonly front: number;
  /** [x, diameter] of round holes on the centre line. */
  readonly holes: readonly (readonly [number, number])[];
}

export interface SketchDoor {
  readonly up: number;
  readonly height: number;
  readonly lets: 'rearward' | 'forward';
}

export interface SketchWall {
  readonly at: number;
  readonly top: number;
  readonly weep: number;
  readonly doors: readonly SketchDoor[];
  /** [down, diameter] of round holes on the centre line. */
  readonly holes: readonly (readonly [number, number])[];
}

/** A wing on one side: a box-like widening between two x, its top level or falling outward. */
export interface SketchWing {
  readonly side: 'left' | 'right';
  readonly rear: number;
  readonly front: number;
  readonly top: number;
  readonly beyond: number;
}

/** Everything a random case needs, from which the grid and the library are told the same pan. */
export interface Sketch {
  readonly length: number;
  readonly width: number;
  readonly top: number;
  readonly displaced: number;
  /** Front to rear, [x, down]. */
  readonly floor: readonly (readonly [number, number])[];
  readonly folded: boolean;
  readonly radius: number;
  readonly thickness: number;
  /** Half-width at the rear end and at the front end of the rail. */
  readonly halfWidths: { readonly rear: number; readonly front: number };
  readonly wings: readonly SketchWing[];
  readonly lids: readonly SketchLid[];
  readonly walls: readonly SketchWall[];
  readonly mouthAt: number;
  readonly attitude: Attitude;
  readonly path: readonly Acceleration[];
  readonly fillShare: number;
}

const deg = Math.PI / 180;

/** Diameter of the mouth, mm. */
export const MOUTH = 20;

/** Plates stand on multiples of this, so that they lie between cubes on the coarsest grid too. */
export const PITCH = { prismatic: 8, wide: 16 } as const;

/** The crest between shallow and sump stands between cubes on all but the coarsest grid: inside one it is not seen. */
const floorOf = (dice: Dice, length: number, pitch: number): Sketch['floor'] => {
  const rear = dice.happens(0.5) ? 0 : dice.between(4, 24);
  const front = length - (dice.happens(0.5) ? 0 : dice.between(4, 24));
  const crest = dice.stepped(Math.ceil((0.4 * length) / pitch) * pitch, 0.65 * length, pitch / 2);
  const shallow = dice.between(24, 44);
  const deep = dice.between(80, 120);
  const step = crest - (dice.happens(0.6) ? 0 : dice.between(8, 30));
  const ahead: (readonly [number, number])[] = dice.happens(0.2)
    ? [
        [front, shallow - dice.between(0, 12)],
        [crest + (front - crest) * dice.between(0.5, 0.7), shallow + dice.between(6, 16)],
        [crest + (front - crest) * dice.between(0.15, 0.35), shallow + dice.between(4, 12)],
      ]
    : [[front, shallow - dice.between(-4, 12)]];
  return [
    ...ahead,
    [crest, shallow],
    [step, deep - dice.between(0, 14)],
    [rear, deep - dice.between(-4, 14)],
  ];
};

const wallsOf = (
  dice: Dice,
  floor: Sketch['floor'],
  lids: readonly SketchLid[],
  pitch: number,
): readonly SketchWall[] => {
  const [step] = floor[floor.length - 2] as readonly [number, number];
  const [, ahead] = floor[floor.length - 2] as readonly [number, number];
  const [rear, behind] = floor[floor.length - 1] as readonly [number, number];
  const deep = Math.min(ahead, behind);
  const one = (from: number, to: number): SketchWall => {
    const at = dice.stepped(Math.ceil(from / pitch) * pitch, to, pitch);
    const lid = lids.find((plate) => plate.rear < at && at < plate.front);
    const top = lid?.down ?? dice.between(20, 60);
    const doors: SketchDoor[] = dice.happens(0.55)
      ? [
          {
            up: dice.between(4, 10),
            height: dice.between(10, 20),
            lets: dice.happens(0.6) ? 'rearward' : 'forward',
          },
        ]
      : [];
    const hole = dice.between(6, 10);
    // Clear of the doors, which stand up to 30 above the floor.
    const room = top + hole + 6 < deep - 34;
    return {
      at,
      top,
      weep: dice.happens(0.5) ? dice.between(2, 5) : 0,
      doors,
      holes: room && dice.happens(0.4) ? [[top + hole / 2 + 3, hole]] : [],
    };
  };
  const count = dice.happens(0.25) ? 0 : dice.happens(0.6) ? 1 : 2;
  const span = step - rear;
  if (count === 0) return [];
  if (count === 1) return [one(rear + 0.3 * span, rear + 0.8 * span)];
  return [one(rear + 0.2 * span, rear + 0.35 * span), one(rear + 0.65 * span, rear + 0.85 * span)];
};

const lidsOf = (dice: Dice, floor: Sketch['floor'], pitch: number): readonly SketchLid[] => {
  if (dice.happens(0.5)) return [];
  const [step, deep] = floor[floor.length - 2] as readonly [number, number];
  const [, shallow] = floor[floor.length - 3] as readonly [number, number];
  const [rear] = floor[floor.length - 1] as readonly [number, number];
  // Clear of the step's fold, past which a lid would leave a gap finer than any cube.
  const low = Math.ceil((shallow + 14) / pitch) * pitch;
  const down = dice.stepped(low, Math.max(low, deep - 34), pitch);
  const lid = {
    down,
    rear: rear + (step - rear) * dice.between(0.1, 0.5),
    front: dice.happens(0.6) ? step : step - (step - rear) * dice.between(0.05, 0.2),
  };
  const holes: (readonly [number, number])[] = dice.happens(0.4)
    ? [[lid.rear + (lid.front - lid.rear) * dice.between(0.3, 0.7), dice.between(8, 16)]]
    : [];
  return [{ ...lid, holes }];
};

const pathOf = (dice: Dice, sideways: boolean): readonly Acceleration[] => {
  const one = (): Acceleration => ({
    forward: dice.between(0.4, 1.4) * (dice.happens(0.75) ? -1 : 1) * (sideways && dice.happens(0.3) ? 0 : 1),
    left: sideways ? dice.between(-1.2, 1.2) : 0,
  });
  return dice.happens(0.25) ? [one(), one()] : [one()];
};

const flatSketch = (dice: Dice, pitch: number, shortest: number): Sketch => {
  const length = dice.stepped(shortest, shortest + 80, pitch);
  const width = dice.stepped(100, 200, 10);
  const floor = floorOf(dice, length, pitch);
  const lids = lidsOf(dice, floor, pitch);
  const [step] = floor[floor.length - 2] as readonly [number, number];
  const [rear] = floor[floor.length - 1] as readonly [number, number];
  const mouthAt = rear + (step - rear) * dice.between(0.2, 0.8);
  return {
    length,
    width,
    top: dice.stepped(48, 80, pitch),
    displaced: dice.happens(0.5) ? 0 : 0.35,
    floor,
    folded: dice.happens(0.6),
    radius: 5,
    thickness: 3,
    halfWidths: { rear: width / 2, front: width / 2 },
    wings: [],
    lids,
    walls: wallsOf(dice, floor, lids, pitch).filter((wall) => Math.abs(wall.at - mouthAt) > MOUTH / 2 + 1),
    mouthAt,
    attitude: {
      noseUp: dice.between(0, 4) * deg,
      leanLeft: 0,
      grade: dice.happens(0.2) ? dice.between(-5, 5) * deg : 0,
      rollPerG: 0,
      divePerG: dice.between(0, 2) * deg,
    },
    path: pathOf(dice, false),
    fillShare: dice.between(0.2, 0.55),
  };
};

/** A pan of one section across its whole width, for a grid one cube wide. */
export const prismaticSketch = (dice: Dice): Sketch => flatSketch(dice, PITCH.prismatic, 320);

/** A pan that narrows, with a wing, in any direction of turn: a grid of cubes. */
export const wideSketch = (dice: Dice): Sketch => {
  const flat = flatSketch(dice, PITCH.wide, 208);
  const [step, deep] = flat.floor[flat.floor.length - 2] as readonly [number, number];
  const [, shallow] = flat.floor[flat.floor.length - 3] as readonly [number, number];
  const [rear] = flat.floor[flat.floor.length - 1] as readonly [number, number];
  const wing: SketchWing = {
    side: dice.happens(0.5) ? 'left' : 'right',
    rear: rear + dice.between(16, 30),
    front: step - dice.between(12, 30),
    top: shallow + (deep - shallow) * dice.between(0.2, 0.5),
    beyond: dice.between(24, 48),
  };
  return {
    ...flat,
    width: 120,
    halfWidths: { rear: 60, front: dice.between(44, 60) },
    wings: dice.happens(0.7) ? [wing] : [],
    attitude: { ...flat.attitude, leanLeft: dice.between(-3, 3) * deg, rollPerG: dice.between(0, 4) * deg },
    path: pathOf(dice, true),
  };
};
