import { bestFirst } from '../geometry/index.js';
import type { Stance } from './engine-jack.js';
import { BOLTED, farthestBetween, type PanPlace, type RemovalScene } from './removal-scene.js';

/** Room that is kept around the pan on its way, mm; less where it starts with less. */
const KEEP = 2;
/** Room beyond this is not asked for, mm. */
const ENOUGH = 40;
/** The search goes in steps of this, mm, and of this turn, radians. */
const STEP = 12;
const TURN = (3 * Math.PI) / 180;
const MOST_PITCH = 4 * TURN;
/** How much sooner down is tried than the way so far is kept short: there are many more ways with a third freedom. */
const HASTE = 1.5;
const FREER_HASTE = 3;
const MOST_LOOKS: Readonly<Record<Freedom, number>> = {
  'side view': 4000,
  sideways: 6000,
  pitched: 3000,
};
const MOST_SLIDE = 480;
const MOST_ASIDE = 180;
const LEAST_STRIDE = 0.1;

export interface StraightDrop {
  /** How far straight down the pan comes, mm. */
  readonly down: number;
  /** What stops it; null: nothing, it is out. */
  readonly binds: string | null;
}

/** Straight down in strides as long as the room there is, so that nothing is passed over. */
export const straightDrop = (scene: RemovalScene, stance: Stance): StraightDrop => {
  let down = 0;
  while (down < scene.bottom) {
    const { room, binds } = scene.room({ ...BOLTED, down }, stance, ENOUGH);
    if (room < LEAST_STRIDE) return { down, binds };
    down += room;
  }
  return { down: scene.bottom, binds: null };
};

export interface WayOut {
  /** The bends of the way and its end; null: no way was found. */
  readonly legs: readonly PanPlace[] | null;
  /** False: the search ran out of looks. */
  readonly complete: boolean;
}

interface Node {
  readonly key: string;
  readonly place: PanPlace;
  readonly cost: number;
  readonly from: Node | null;
}

/** What the pan may do on its way beside going down, fore and aft: nothing, go sideways, or be pitched. */
export type Freedom = 'side view' | 'sideways' | 'pitched';

/**
 * A way out: down, fore and aft, and sideways or pitched where that is allowed; the shorter and the lower first (A*,
 * its guess weighted). Each step is proved free: room around the pan shrinks no faster than its corners move, so a
 * step is halved until the room at its ends is more than its length.
 *
 * @param tell Share of the most looks taken, 0–1.
 */
export const wayOut = (
  scene: RemovalScene,
  stance: Stance,
  freedom: Freedom,
  tell: (share: number) => void = () => {},
): WayOut => {
  const start = scene.room(BOLTED, stance, ENOUGH).room;
  const mostLooks = MOST_LOOKS[freedom];
  const keep = Math.min(KEEP, start / 2);
  if (!(keep > LEAST_STRIDE / 2)) return { legs: null, complete: true };
  const seen = new Map<string, number>();
  const roomAt = (place: PanPlace): number => {
    const key = keyOf(place);
    const known = seen.get(key);
    if (known !== undefined) return known;
    const { room } = scene.room(place, stance, ENOUGH);
    seen.set(key, room);
    return room;
  };
  const length = (a: PanPlace, b: PanPlace): number => farthestBetween(a, b, scene.reach);
  const free = (a: PanPlace, b: PanPlace): boolean => {
    const [ra, rb] = [roomAt(a), roomAt(b)];
    if (ra < keep || rb < keep) return false;
    if (ra + rb >= length(a, b)) return true;
    const middle: PanPlace = {
      forward: (a.forward + b.forward) / 2,
      left: (a.left + b.left) / 2,
      down: (a.down + b.down) / 2,
      pitch: (a.pitch + b.pitch) / 2,
    };
    return free(a, middle) && free(middle, b);
  };
  const haste = freedom === 'side view' ? HASTE : FREER_HASTE;
  const open = bestFirst<Node>((node) => -(node.cost + haste * (scene.bottom - node.place.down)));
  const done = new Set<string>();
  open.push({ key: keyOf(BOLTED), place: BOLTED, cost: 0, from: null });
  while (seen.size < mostLooks) {
    tell(seen.size / mostLooks);
    const node = open.pop();
    if (node === undefined) return { legs: null, complete: true };
    if (done.has(node.key)) continue;
    done.add(node.key);
    if (node.place.down >= scene.bottom)
      return { legs: pulled(wayTo(node), scene.studs, free), complete: true };
    for (const place of around(node.place, scene, freedom)) {
      const key = keyOf(place);
      if (done.has(key) || !free(node.place, place)) continue;
      open.push({ key, place, cost: node.cost + length(node.place, place), from: node });
    }
  }
  return { legs: null, complete: false };
};

const keyOf = ({ forward, left, down, pitch }: PanPlace): string =>
  `${forward.toFixed(3)},${left.toFixed(3)},${down.toFixed(3)},${pitch.toFixed(6)}`;

const STAY = [0] as const;
const EITHER = [0, -1, 1] as const;

/** Studs let it come straight down only. */
const around = (
  { forward, left, down, pitch }: PanPlace,
  { studs, bottom }: RemovalScene,
  freedom: Freedom,
): readonly PanPlace[] => {
  const out: PanPlace[] = [];
  for (const dx of EITHER)
    for (const dz of [1, 0, -1])
      for (const dy of freedom === 'sideways' ? EITHER : STAY)
        for (const turn of freedom === 'pitched' ? EITHER : STAY) {
          const straight = dx === 0 && dy === 0 && turn === 0;
          if (straight && dz === 0) continue;
          const place: PanPlace = {
            forward: forward + dx * STEP,
            left: left + dy * STEP,
            down: Math.min(bottom, down + dz * STEP),
            pitch: pitch + turn * TURN,
          };
          if (place.down < 0 || Math.abs(place.forward) > MOST_SLIDE) continue;
          if (Math.abs(place.left) > MOST_ASIDE || Math.abs(place.pitch) > MOST_PITCH) continue;
          if (!straight && Math.min(down, place.down) < studs) continue;
          out.push(place);
        }
  return out;
};

const wayTo = (end: Node): readonly PanPlace[] => {
  const way: PanPlace[] = [];
  for (let node: Node | null = end; node !== null; node = node.from) way.unshift(node.place);
  return way;
};

/** The way pulled straight: from each bend to the farthest place that can be reached in one go; its start left out. */
const pulled = (
  way: readonly PanPlace[],
  studs: number,
  free: (a: PanPlace, b: PanPlace) => boolean,
): readonly PanPlace[] => {
  const bends: PanPlace[] = [];
  for (let i = 0; i < way.length - 1; ) {
    const from = way[i]!;
    let next = i + 1;
    for (let j = way.length - 1; j > next; j--) {
      const to = way[j]!;
      const straight = to.forward === from.forward && to.left === from.left && to.pitch === from.pitch;
      if ((straight || from.down >= studs) && free(from, to)) next = j;
    }
    bends.push(way[next]!);
    i = next;
  }
  return bends;
};
