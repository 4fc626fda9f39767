import type { Design, Stay } from '../design/index.js';
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
import { fastenerFor } from './fastener.js';
import { pickupTube, tubeOutside } from './pickup-tube.js';
import type { Profile } from './profile.js';
import practice from './stay-practice.json' with { type: 'json' };
import type { TubeStraight } from './tube-bend.js';

/**
 * A strip folded once that hangs from a bolt of the engine and holds the pickup's tube in a clip: a level foot under
 * the bolt's seat, an upright arm that the tube lies against. Lengths in mm, places in pan axes.
 */
export interface PickupStay {
  readonly width: number;
  readonly thickness: number;
  /** Middle of the seat, on the foot's upper face. */
  readonly seat: Vec3;
  /** Level, along the fold and the tube. */
  readonly along: Vec3;
  /** Level, from the foot's free end to its fold. */
  readonly toward: Vec3;
  /** Outside length from its free end to the arm's far face, and from that end to its hole. */
  readonly foot: { readonly length: number; readonly hole: number };
  /** Outside length from the foot's upper face to its free end, and from that face to its hole. */
  readonly arm: { readonly length: number; readonly hole: number };
  /** Where the clip's middle is on the tube's centre line, and how far along the tube from the mouth. */
  readonly clip: { readonly at: Vec3; readonly along: number };
}

const UP: Vec3 = [0, 0, 1];
const STEEPEST = Math.sin((practice.steepest_deg * Math.PI) / 180);

/** Metal beyond a bolt's middle, mm. */
const edgeOf = (thread: number): number => practice.edge_diameters * thread;

/**
 * The stay that the design asks for; null where it asks for none.
 *
 * @throws PanError `shape-fold` where the tube's way is not given, no straight of it passes the bolt, or the bolt is
 * too near to the tube for a fold
 */
export const pickupStay = (design: Design, profile: Profile): PickupStay | null => {
  const { stay } = design.pickup;
  if (stay === undefined) return null;
  const tube = pickupTube(design, profile);
  if (tube === null)
    throw refused('The stay has no tube to hold: its way is not given.', 'Write pickup.route.');
  const reach = tubeOutside(design) / 2;
  const held = tube.straights
    .map((straight) => clipOn(straight, stay, reach))
    .filter((clip) => clip !== null)
    .sort((a, b) => length3(subtract3(a.hole, stay.at)) - length3(subtract3(b.hole, stay.at)))[0];
  if (held === undefined) {
    throw refused(
      `No level straight of the tube, ${stay.width} mm long beside the stay’s bolt, passes ${place(stay.at)}.`,
      `Choose a bolt of the engine beside a straight: ${straightWords(tube.straights)}.`,
    );
  }
  return freeze(folded(design, stay, held, reach));
};

interface Held {
  readonly at: Vec3;
  readonly along: number;
  /** Middle of the clip's bolt, on the tube's upright plane. */
  readonly hole: Vec3;
  /** Level, along the tube. */
  readonly level: Vec3;
}

/** The place of a straight whose clip's bolt is square beside the stay's own. */
const clipOn = ({ from, to, along }: TubeStraight, stay: Stay, reach: number): Held | null => {
  const length = length3(subtract3(to, from));
  if (length < stay.width) return null;
  const way = unit3(subtract3(to, from));
  if (Math.abs(way[2]) > STEEPEST) return null;
  const level = unit3([way[0], way[1], 0]);
  const over = unit3(subtract3(UP, scale3(way, way[2])));
  const up = scale3(over, reach + practice.clip_diameters_over_tube * stay.clip);
  const s = dot3(subtract3(stay.at, add3(from, up)), level) / dot3(way, level);
  if (s < stay.width / 2 || s > length - stay.width / 2) return null;
  const at = add3(from, scale3(way, s));
  return { at, along: along + s, hole: add3(at, up), level };
};

/** Room from a bolt's middle to the outside of a fold: half its washer, the sheet and the bend's radius. */
const clearOf = (design: Design, { thickness }: Stay, thread: number): number =>
  fastenerFor(thread).washer / 2 + thickness + design.pan.sheet.bendRadius;

const folded = (design: Design, stay: Stay, { at, along, hole, level }: Held, reach: number): PickupStay => {
  const { width, thickness, size, clip } = stay;
  const across = cross3(UP, level);
  const off = dot3(subtract3(at, stay.at), across);
  const toward = off < 0 ? scale3(across, -1) : across;
  const [footRoom, armRoom] = [clearOf(design, stay, size), clearOf(design, stay, clip)];
  // Beside the tube where the foot has room for its bolt, else over it and down its far side.
  const near = Math.abs(off) - reach;
  const beyond = near >= footRoom ? near : Math.abs(off) + reach + thickness;
  const drop = stay.at[2] - hole[2];
  if (drop < armRoom) {
    throw refused(
      `The stay’s seat is ${Math.abs(drop).toFixed(0)} mm ${drop < 0 ? 'below' : 'above'} the bolt of its clip; for the fold it must be ${armRoom.toFixed(0)} mm above.`,
      'Choose a higher seat, or lead the tube lower there.',
      { value: drop, limit: armRoom },
    );
  }
  if (beyond < footRoom) {
    throw refused(
      `The stay’s bolt is ${beyond.toFixed(0)} mm from its fold; its washer needs ${footRoom.toFixed(0)} mm.`,
      'Choose a bolt farther from the tube.',
      { value: beyond, limit: footRoom },
    );
  }
  return {
    width,
    thickness,
    seat: stay.at,
    along: cross3(toward, UP),
    toward,
    foot: { length: edgeOf(size) + beyond, hole: edgeOf(size) },
    arm: { length: drop + edgeOf(clip), hole: drop },
    clip: { at, along },
  };
};

const place = (p: Vec3): string => p.map((v) => v.toFixed(0)).join(', ');

const straightWords = (straights: readonly TubeStraight[]): string =>
  straights.map(({ from, to }) => `${place(from)} to ${place(to)}`).join('; ');

const refused = (
  message: string,
  advice: string,
  room: { readonly value: number; readonly limit: number } | null = null,
): PanError =>
  new PanError({
    code: 'shape-fold',
    path: ['pickup', 'stay'],
    message,
    advice,
    ...(room === null ? {} : { ...room, unit: 'mm' }),
  });
