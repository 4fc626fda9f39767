import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { insideLine, type OuterSolid, type PanModel, type Plate } from '../pan/index.js';
import { BOLTED, type PanPlace, type RemovalScene, removalScene } from './removal-scene.js';
import { type StraightDrop, straightDrop, wayOut } from './removal-search.js';

/** How the pan comes off with the engine in the car. */
export interface Removal {
  /** Straight down from where it is bolted, the engine where it is. */
  readonly straight: StraightDrop;
  /** The pickup stays on the engine, or has to be undone and come along; null: neither way was found. */
  readonly pickup: 'stays' | 'comes along' | null;
  /** What catches a pickup that stays; null where it may. */
  readonly pickupCatches: string | null;
  /** How far the engine has to be lifted, mm; null: no lift that was looked at frees it. */
  readonly lift: number | null;
  /** How far the engine can be lifted before it meets something, mm. */
  readonly mostLift: { readonly by: number; readonly binds: string | null };
  /** The way out with that lift, bend by bend; empty where none was found. */
  readonly legs: readonly PanPlace[];
  /** A way out without lifting, the pan tilted as it comes; null: none was found, or none is needed. */
  readonly tilted: readonly PanPlace[] | null;
  /** False: a search ran out of looks, so that a smaller lift may do. */
  readonly complete: boolean;
}

/** The most an engine is lifted, mm, and how narrowly the least lift is looked for. */
const MOST_LIFT = 150;
const NARROW = 10;
const LOOKS = 4000;
/** Lifts looked at, as halving to a centimetre goes. */
const MOST_TRIES = 6;
const TILTED_LOOKS = 3000;
const ENOUGH = 40;
const TOUCHING = 0.1;

/** null where the chassis's axes are not known. */
export const removalOf = (
  design: Design,
  model: PanModel,
  solids: readonly OuterSolid[],
  plates: readonly Plate[],
  tell: (share: number) => void = () => {},
): Removal | null => {
  const line = insideLine(design, model.profile);
  const stays = removalScene(design, solids, line, plates, model.mouth);
  const along = removalScene(design, solids, line, plates, null);
  if (stays === null || along === null) return null;
  const mostLift = liftRoom(along);
  const caught = stays.room(BOLTED, 0, ENOUGH).room < TOUCHING;
  const first = caught ? null : leastLift(stays, mostLift.by, (share) => tell(0.4 * share));
  const second = first?.lift === 0 ? null : leastLift(along, mostLift.by, (share) => tell(0.4 + 0.4 * share));
  const comesAlong = second !== null && (first === null || less(second.lift, first.lift));
  const found = comesAlong ? second : first;
  const scene = comesAlong ? along : stays;
  const lift = found?.lift ?? null;
  const tilted = lift === 0 ? null : wayOut(scene, 0, true, TILTED_LOOKS, (share) => tell(0.8 + 0.2 * share));
  return freeze({
    straight: straightDrop(scene, 0),
    pickup: lift === null && !tilted?.legs ? null : comesAlong ? 'comes along' : 'stays',
    pickupCatches: comesAlong ? catchOf(stays) : null,
    lift,
    mostLift,
    legs: found?.legs ?? [],
    tilted: tilted?.legs ?? null,
    complete: (found?.complete ?? true) && (tilted?.complete ?? true),
  });
};

/** Whether undoing the pickup spares lift worth the work. */
const less = (along: number | null, stays: number | null): boolean =>
  along !== null && (stays === null || along < stays - NARROW);

/** The part of the pan that a pickup on the engine first meets on its way down. */
const catchOf = (stays: RemovalScene): string | null => {
  const { down, binds } = straightDrop(stays, 0);
  return binds === null ? null : stays.part({ ...BOLTED, down }, 0, binds);
};

interface Lifted {
  readonly lift: number | null;
  readonly legs: readonly PanPlace[];
  readonly complete: boolean;
}

/** The least lift, to a centimetre, with which a way out was found; none where the most that can be is not enough. */
const leastLift = (scene: RemovalScene, most: number, tell: (share: number) => void): Lifted => {
  let complete = true;
  let tries = 0;
  const tried = (lift: number): readonly PanPlace[] | null => {
    const straight = straightDrop(scene, lift);
    if (straight.binds === null) return [{ ...BOLTED, down: straight.down }];
    const from = tries++;
    const out = wayOut(scene, lift, false, LOOKS, (share) => tell(Math.min(1, (from + share) / MOST_TRIES)));
    complete &&= out.complete;
    return out.legs;
  };
  const still = tried(0);
  if (still !== null) return { lift: 0, legs: still, complete };
  let [no, yes] = [0, most];
  let legs = most > NARROW ? tried(most) : null;
  if (legs === null) return { lift: null, legs: [], complete };
  while (yes - no > NARROW) {
    const middle = (no + yes) / 2;
    const better = tried(middle);
    if (better === null) no = middle;
    else [yes, legs] = [middle, better];
  }
  return { lift: yes, legs, complete };
};

/** Upward in strides as long as the room there is; what can be opened over the engine is open. */
const liftRoom = (scene: RemovalScene): Removal['mostLift'] => {
  let by = 0;
  while (by < MOST_LIFT) {
    const { room, binds } = scene.engineRoom(by, ENOUGH);
    if (room < TOUCHING) return { by, binds };
    by += room;
  }
  return { by: MOST_LIFT, binds: null };
};
