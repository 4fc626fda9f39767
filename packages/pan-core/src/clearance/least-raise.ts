import type { Jack } from './engine-jack.js';
import { BOLTED, type PanPlace, type RemovalScene, TOUCHING } from './removal-scene.js';
import { straightDrop, wayOut } from './removal-search.js';

/** How far a jack can raise the engine, mm, and what stops it; null: nothing within the most that is looked at. */
export interface JackRoom {
  readonly by: number;
  readonly binds: string | null;
}

export interface LeastRaise {
  /** mm at the jack; null: no raise that was looked at frees the pan. */
  readonly raised: number | null;
  readonly legs: readonly PanPlace[];
  /** False: a search ran out of looks. */
  readonly complete: boolean;
}

/** How narrowly the least raise is looked for, mm. */
const NARROW = 5;
/** Raises looked at, as halving to that goes. */
const MOST_TRIES = 6;
const ENOUGH = 40;

/** Upward in strides as long as the room there is; what can be opened over the engine is open. */
export const jackRoom = (scene: RemovalScene, jack: Jack): JackRoom => {
  let by = 0;
  while (by < jack.most) {
    const { room, binds } = scene.engineRoom(jack.stance(by), ENOUGH);
    if (room < TOUCHING) return { by, binds };
    // Half of what counts as touching is left, so that the stop itself is still clear.
    by = jack.further(by, room - TOUCHING / 2);
  }
  return { by: jack.most, binds: null };
};

/** The least raise of one jack with which a way out was found; none where the most it can is not enough. */
export const leastRaise = (
  scene: RemovalScene,
  jack: Jack,
  most: number,
  tell: (share: number) => void,
): LeastRaise => {
  let complete = true;
  let tries = 0;
  const tried = (raised: number): readonly PanPlace[] | null => {
    const stance = jack.stance(raised);
    const straight = straightDrop(scene, stance);
    if (straight.binds === null) return [{ ...BOLTED, down: straight.down }];
    const from = tries++;
    const out = wayOut(scene, stance, 'side view', (share) => tell(Math.min(1, (from + share) / MOST_TRIES)));
    complete &&= out.complete;
    return out.legs;
  };
  let legs = most > NARROW ? tried(most) : null;
  if (legs === null) return { raised: null, legs: [], complete };
  let [no, yes] = [0, most];
  while (yes - no > NARROW) {
    const middle = (no + yes) / 2;
    const better = tried(middle);
    if (better === null) no = middle;
    else [yes, legs] = [middle, better];
  }
  return { raised: yes, legs, complete };
};
