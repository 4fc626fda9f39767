import type { Design } from '../design/index.js';
import {
  afterRotation,
  boundsOf,
  NO_ROTATION,
  type Rotation,
  type RoundHull,
  rotate3,
  tiltedToLevel,
} from '../geometry/index.js';
import { add3, subtract3, type Vec3 } from '../numeric/index.js';
import { floorProfile, type Mouth, type OuterSolid, type OutsideLine, type Plate } from '../pan/index.js';
import { type Body, type BodySolid, bodyOf } from './body.js';
import { carriedSolids, itemSolid } from './carried.js';
import { formedObstacles } from './chassis.js';
import { chassisAxes } from './chassis-axes.js';
import { AT_REST, type Jack, jacksOf, mountsOf, type Stance } from './engine-jack.js';
import { behindInside, plateSolids } from './inside-shell.js';
import { type KnownRoom, knownRoom } from './known-room.js';
import { NO_ROCK } from './least-gap.js';
import { hullForm, type Motion, type ObstacleForm } from './obstacle-form.js';
import { hullOfShape } from './obstacle-hull.js';
import { type Gap, leastOf, type PanRoom } from './pan-room.js';
import { roundSolid } from './round.js';
import { staySolids } from './stay-solid.js';
import { rodSweeps } from './sweep.js';

/** Where the loosened pan is, from where it was bolted: forward, to the left and down along the engine, and nose up. */
export interface PanPlace {
  readonly forward: number;
  readonly left: number;
  readonly down: number;
  readonly pitch: number;
}

export const BOLTED: PanPlace = Object.freeze({ forward: 0, left: 0, down: 0, pitch: 0 });

/** The loosened pan among the car and what stays on the engine. */
export interface RemovalScene {
  /** @param stance Where the engine stands in the car. @param enough Room beyond this is not asked for. */
  readonly room: (place: PanPlace, stance: Stance, enough: number) => PanRoom;
  /** The part of the pan that is nearest to what binds. */
  readonly part: (place: PanPlace, stance: Stance, binds: string) => string;
  /** Room of the engine, with all on it and the pan, to the car. */
  readonly engineRoom: (stance: Stance, enough: number) => PanRoom;
  /** The ways of raising the engine. */
  readonly jacks: readonly Jack[];
  /** How far the pan's corners are from the point it is pitched about, mm. */
  readonly reach: number;
  /** How far studs keep the pan straight, mm. */
  readonly studs: number;
  /** How far down the pan is out whatever hangs about it, mm. */
  readonly bottom: number;
}

interface Meeting {
  readonly name: string;
  readonly body: Body;
  readonly form: ObstacleForm;
  /** Part of the car, or of the engine. */
  readonly of: 'car' | 'engine';
  /** A scan: a look at it is dear. */
  readonly isDear: boolean;
}

const SLACK = 0.2;
/** Less room than this counts as touching, mm. */
export const TOUCHING = 0.1;
const TOUCH = Object.freeze({ enough: 2 * TOUCHING, slack: TOUCHING / 10 });
/** Height of the pickup's mouth that is taken to be as wide as its rim, mm. */
const MOUTH_HEIGHT = 12;
const ROUND_SIDES = 32;

/**
 * null where the chassis's axes are not known.
 *
 * @param pickup The mouth of a pickup that stays on the engine; null where it is undone and comes along.
 */
export const removalScene = (
  design: Design,
  solids: readonly OuterSolid[],
  inside: OutsideLine,
  plates: readonly Plate[],
  pickup: Mouth | null,
): RemovalScene | null => {
  const axes = chassisAxes(design);
  if (!axes.known) return null;
  const outside = bodyOf(solids.filter((s) => s.role !== 'bolt'));
  const inner = bodyOf([
    ...behindInside(design, inside, design.pan.sheet.thickness),
    ...plates.flatMap(plateSolids),
  ]);
  // What hangs over the engine is open or off while somebody works under it; the car stands high on stands.
  const car = formedObstacles(design).filter(
    ({ obstacle: { shape } }) => !(shape.kind === 'plane' && shape.normal[2] < 0),
  );
  const still = (hull: RoundHull): ObstacleForm => hullForm([{ shape: null, hull }]);
  const meetings: readonly Meeting[] = [
    ...car.map(
      ({ obstacle, form }): Meeting => ({
        name: obstacle.name,
        body: outside,
        form,
        of: 'car',
        isDear: obstacle.shape.kind === 'scan',
      }),
    ),
    ...besideEngine(design).map(
      (solid): Meeting => ({
        name: solid.name,
        body: outside,
        form: still({ points: solid.vertices, radius: 0 }),
        of: 'engine',
        isDear: false,
      }),
    ),
    ...hangingIn(design, pickup).map(
      ([name, hulls]): Meeting => ({
        name,
        body: inner,
        form: hullForm(hulls.map((hull) => ({ shape: null, hull }))),
        of: 'engine',
        isDear: false,
      }),
    ),
  ];
  const [cheap, dear] = [meetings.filter(({ isDear }) => !isDear), meetings.filter(({ isDear }) => isDear)];
  const { low, high } = boundsOf(outside.solids.flatMap((s) => s.vertices));
  const pivot: Vec3 = [(low[0] + high[0]) / 2, 0, (low[2] + high[2]) / 2];
  // The pan comes up with the engine; where they meet as designed it is no use asking.
  const engine = bodyOf(carriedSolids(design));
  const raised = [
    ...(engine.solids.length === 0 ? [] : [['engine', engine] as const]),
    ...(car.some(
      ({ form }) => form.gap(outside, placed(BOLTED, pivot, axes.toChassis, AT_REST), TOUCH) < TOUCHING,
    )
      ? []
      : [['pan', outside] as const]),
  ];
  const corners = [engine, outside].flatMap((body) => body.solids.flatMap((s) => s.vertices));
  const jacks = jacksOf(mountsOf(design).mounts, axes.toChassis, corners);
  const motion = (of: Meeting['of'], place: PanPlace, stance: Stance) =>
    of === 'car' ? placed(place, pivot, axes.toChassis, stance) : placed(place, pivot, NO_ROTATION, AT_REST);
  const reach = Math.hypot(high[0] - pivot[0], high[2] - pivot[2]);
  const gapOf = ({ body, form, of }: Meeting, place: PanPlace, stance: Stance, limit: number): number =>
    form.gap(body, motion(of, place, stance), { enough: limit, slack: SLACK });
  const apart = (a: PanPlace, b: PanPlace): number => farthestBetween(a, b, reach);
  const known = new WeakMap<Stance, ReadonlyMap<Meeting, KnownRoom<PanPlace>>>();
  /** What earlier looks at the scans tell, the engine standing as it does. */
  const knownFor = (stance: Stance): ReadonlyMap<Meeting, KnownRoom<PanPlace>> => {
    const made =
      known.get(stance) ??
      new Map(
        dear.map((meeting) => [
          meeting,
          knownRoom((place: PanPlace, limit) => gapOf(meeting, place, stance, limit), apart, SLACK),
        ]),
      );
    known.set(stance, made);
    return made;
  };
  const gapsAt = (place: PanPlace, stance: Stance): readonly Gap[] => [
    ...cheap.map((meeting) => ({
      name: meeting.name,
      gap: (limit: number) => gapOf(meeting, place, stance, limit),
    })),
    // Scans come last: by then what they are asked is mostly answered by a bound.
    ...[...knownFor(stance)].map(([{ name }, { isAtLeast, spare }]) => ({
      name,
      gap: (limit: number) => (isAtLeast(place, limit) ? limit : spare(place, limit)),
    })),
  ];
  // What bound the last place mostly binds the next.
  let bound = '';
  return {
    part: (place, stance, binds) => {
      const meeting = meetings.find(({ name }) => name === binds);
      if (meeting === undefined) return 'pan';
      return meeting.form.approach(meeting.body, motion(meeting.of, place, stance)).feature;
    },
    room: (place, stance, enough) => {
      const found = leastOf(gapsAt(place, stance), enough, bound);
      bound = found.binds;
      return found;
    },
    engineRoom: (stance, enough) =>
      leastOf(
        raised.flatMap(([name, body]) =>
          car.map(({ obstacle, form }) => ({
            name: `${name} to ${obstacle.name}`,
            gap: (limit: number) =>
              form.gap(body, placed(BOLTED, pivot, axes.toChassis, stance), { enough: limit, slack: SLACK }),
          })),
        ),
        enough,
      ),
    jacks,
    reach,
    studs: design.engine.studs,
    bottom: Math.max(300, 2 * (high[2] - low[2])),
  };
};

/** No corner of the pan moves farther than this from one place to another, mm. */
export const farthestBetween = (a: PanPlace, b: PanPlace, reach: number): number => {
  const [x, y, z] = [a.forward - b.forward, a.left - b.left, a.down - b.down];
  return Math.sqrt(x * x + y * y + z * z) + reach * Math.abs(a.pitch - b.pitch);
};

/** The pan turned about its middle, then moved; as a motion of an engine that carried it there. */
const placed = (
  { forward, left, down, pitch }: PanPlace,
  pivot: Vec3,
  toCar: Rotation,
  { turn: raise, shift }: Stance,
): Motion => {
  const turn = tiltedToLevel(pitch, 0);
  const moved = add3(subtract3(pivot, rotate3(turn, pivot)), [forward, left, -down]);
  const toChassis = afterRotation(raise, toCar);
  return {
    toChassis: afterRotation(toChassis, turn),
    rock: NO_ROCK,
    moves: null,
    shift: add3(rotate3(toChassis, moved), shift),
  };
};

/** What stands beside the pan on the engine; the block itself is over it and only ever left. */
const besideEngine = (design: Design): readonly BodySolid[] => {
  const { carries, crank, bellHousing } = design.engine;
  return [
    ...carries.map(itemSolid),
    ...(bellHousing === null || crank === null
      ? []
      : [roundSolid('bell housing', bellHousing, crank.centreAboveRail)]),
  ];
};

/** What hangs into the pan from the engine. */
const hangingIn = (
  design: Design,
  pickup: Mouth | null,
): readonly (readonly [string, readonly RoundHull[]])[] => {
  const { inside, crank } = design.engine;
  const sweeps = crank === null ? null : rodSweeps(crank);
  // One round from the first throw to the last: what comes off between two throws is not worth a way of its own.
  const rods: RoundHull = {
    points: (sweeps ?? []).flatMap((s) =>
      [s.x0, s.x1].flatMap((x) => ring((c, k) => [x, s.radius * c, s.height + s.radius * k])),
    ),
    radius: 0,
  };
  return [
    ...inside.map((item) => [item.name, [hullOfShape(item.shape)]] as const),
    ...(rods.points.length === 0 ? [] : [['rods', [rods]] as const]),
    ...(pickup === null ? [] : [['pickup', pickupHulls(design, pickup)] as const]),
  ];
};

const pickupHulls = (design: Design, { centre, radius }: Mouth): readonly RoundHull[] => {
  const { bore, wall, route } = design.pickup;
  const [x, y, low] = centre;
  const tube = route.slice(1).map(
    (b, i): RoundHull => ({
      points: [route[i]!, b],
      radius: bore / 2 + wall,
    }),
  );
  const disc = [low, low + MOUTH_HEIGHT].flatMap((z) => ring((c, k) => [x + radius * c, y + radius * k, z]));
  const stay = staySolids(design, floorProfile(design));
  return [
    { points: disc, radius: 0 },
    ...tube,
    ...stay.map(({ vertices }): RoundHull => ({ points: vertices, radius: 0 })),
  ];
};

const ring = (at: (cos: number, sin: number) => Vec3): readonly Vec3[] => {
  const out = 1 / Math.cos(Math.PI / ROUND_SIDES);
  return Array.from({ length: ROUND_SIDES }, (_, i) => {
    const t = (2 * Math.PI * i) / ROUND_SIDES;
    return at(out * Math.cos(t), out * Math.sin(t));
  });
};
