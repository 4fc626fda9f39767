import { bestFirst } from '../geometry/index.js';
import { BOLTED, type PanPlace, type RemovalScene } from './removal-scene.js';

/** Room that is kept around the pan on its way, mm; less where it starts with less. */
const KEEP = 2;
/** Room beyond this is not asked for, mm. */
const ENOUGH = 40;
/** The search goes in steps of this, mm, and of this turn, radians. */
const STEP = 12;
const TURN = (3 * Math.PI) / 180;
const MOST_PITCH = 4 * TURN;
/** How much sooner down is tried than the way so far is kept short: with a tilt there are many more ways. */
const HASTE = 1.5;
const TILTED_HASTE = 3;
const MOST_SLIDE = 480;
const LEAST_STRIDE = 0.1;

export interface StraightDrop {
  /** How far straight down the pan comes, mm. */
  readonly down: number;
  /** What stops it; null: nothing, it is out. */
  readonly binds: string | null;
}

/** Straight down in strides as long as the room there is, so that nothing is passed over. */
export const straightDrop = (scene: RemovalScene, lift: number): StraightDrop => {
  let down = 0;
  while (down < scene.bottom) {
    const { room, binds } = scene.room({ ...BOLTED, down }, lift, ENOUGH);
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

/**
 * A way out seen from the side: down, fore and aft, and pitched where that is allowed; the shorter and the lower first (A*, its guess weighted). Each
 * step is proved free: room around the pan shrinks no faster than its corners move, so a step is halved until the
 * room at its ends is more than its length.
 *
 * @param tell Share of the most looks taken, 0–1.
 */
export const wayOut = (
  scene: RemovalScene,
  lift: number,
  pitched: boolean,
  mostLooks: number,
  tell: (share: number) => void,
): WayOut => {
  const start = scene.room(BOLTED, lift, ENOUGH).room;
  const keep = Math.min(KEEP, start / 2);
  if (!(keep > LEAST_STRIDE / 2)) return { legs: null, complete: true };
  const seen = new Map<string, number>();
  const roomAt = (place: PanPlace): number => {
    const key = keyOf(place);
    const known = seen.get(key);
    if (known !== undefined) return known;
    const { room } = scene.room(place, lift, ENOUGH);
    seen.set(key, room);
    return room;
  };
  const length = (a: PanPlace, b: PanPlace): number =>
    Math.hypot(a.forward - b.forward, a.down - b.down) + scene.reach * Math.abs(a.pitch - b.pitch);
  const free = (a: PanPlace, b: PanPlace): boolean => {
    const [ra, rb] = [roomAt(a), roomAt(b)];
    if (ra < keep || rb < keep) return false;
    if (ra + rb >= length(a, b)) return true;
    const middle: PanPlace = {
      forward: (a.forward + b.forward) / 2,
      down: (a.down + b.down) / 2,
      pitch: (a.pitch + b.pitch) / 2,
    };
    return free(a, middle) && free(middle, b);
  };
  const haste = pitched ? TILTED_HASTE : HASTE;
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
    for (const place of around(node.place, scene, pitched)) {
      const key = keyOf(place);
      if (done.has(key) || !free(node.place, place)) continue;
      open.push({ key, place, cost: node.cost + length(node.place, place), from: node });
    }
  }
  return { legs: null, complete: false };
};

const keyOf = ({ forward, down, pitch }: PanPlace): string =>
  `${forward.toFixed(3)},${down.toFixed(3)},${pitch.toFixed(6)}`;

/** Studs let it come straight down only. */
const around = (
  { forward, down, pitch }: PanPlace,
  { studs, bottom }: RemovalScene,
  pitched: boolean,
): readonly PanPlace[] => {
  const out: PanPlace[] = [];
  for (const dx of [0, -1, 1])
    for (const dz of [1, 0, -1])
      for (const turn of pitched ? [0, -1, 1] : [0]) {
        if (dx === 0 && dz === 0 && turn === 0) continue;
        const place: PanPlace = {
          forward: forward + dx * STEP,
          down: Math.min(bottom, down + dz * STEP),
          pitch: pitch + turn * TURN,
        };
        const straight = dx === 0 && turn === 0;
        if (place.down < 0 || Math.abs(place.forward) > MOST_SLIDE || Math.abs(place.pitch) > MOST_PITCH)
          continue;
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
      const straight = to.forward === from.forward && to.pitch === from.pitch;
      if ((straight || from.down >= studs) && free(from, to)) next = j;
    }
    bends.push(way[next]!);
    i = next;
  }
  return bends;
};
