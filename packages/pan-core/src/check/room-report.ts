import {
  type EngineRoom,
  MOST_GIVE,
  type RoomGive,
  type RoomPair,
  type RoomPlace,
  roomAtTilt,
  roomGives,
  roomPairs,
  roomToMove,
  type ShiftRange,
  type Wanted,
} from '../clearance/index.js';
import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { OuterSolid } from '../pan/index.js';
import { clearanceLimit } from './fit-checks.js';

/** A place of the engine: how far forward and up of where the design has it. */
export interface ShiftPlace {
  readonly forward_mm: number;
  readonly up_mm: number;
  /** What is next in the way, as the clearances call it. */
  readonly binds: string;
}

/** The engine turned about the rear of the rail until its nose stands as said. */
export interface TiltRow {
  readonly nose_up_deg: number;
  readonly clear: boolean;
  readonly here: { readonly binds: string; readonly spare_mm: number };
  /** null: no place in the range is clear. */
  readonly lowest: ShiftPlace | null;
}

/** Where the engine can stand with everything clear at its worst. */
export interface RoomReport {
  readonly range_mm: { readonly forward: readonly [number, number]; readonly up: readonly [number, number] };
  readonly clear: boolean;
  readonly here: { readonly binds: string; readonly spare_mm: number };
  readonly nearest: ShiftPlace | null;
  readonly lowest: ShiftPlace | null;
  readonly highest: ShiftPlace | null;
  /** Where there is most room all round; null where it clears as it is, or nowhere. */
  readonly roomiest: (ShiftPlace & { readonly spare_mm: number }) | null;
  readonly sides: readonly {
    readonly toward: string;
    readonly by_mm: number;
    readonly binds: string | null;
  }[];
  /** What would have to give where nothing in the range is clear, least first. */
  readonly gives: readonly {
    readonly obstacle: string;
    readonly toward: string;
    readonly by_mm: number;
    readonly forward_mm: number;
    readonly up_mm: number;
  }[];
  readonly map: {
    readonly forward_mm: readonly number[];
    readonly up_mm: readonly number[];
    readonly names: readonly string[];
    readonly spare_mm: readonly (readonly number[])[];
    readonly binds: readonly (readonly number[])[];
  };
  /** The same at other tilts of the engine, where they were asked for. */
  readonly tilts: readonly TiltRow[];
  readonly proved: boolean;
  readonly guarantee: string;
}

const GUARANTEE =
  'A clear place is proved clear over the whole movement of the engine; lowest, highest and nearest are the best there are to within 0.5 mm, as no look passes over more room than it found.';

/** Places across and down the map. */
export const MAP_STEPS = [41, 21] as const;

/**
 * Room to move; null where the axes, or the crank that the engine rocks about, are not known, or there is nothing to meet.
 *
 * @param tilts Other heights of the nose to look at, radians.
 * @param tell Share of the work done, 0–1.
 */
export const roomReport = (
  design: Design,
  solids: readonly OuterSolid[],
  range: ShiftRange,
  tilts: readonly number[] = [],
  tell: (share: number) => void = () => {},
): RoomReport | null => {
  const wanted: Wanted = ({ name, ground, usual }) =>
    clearanceLimit(design, ground ? 'ground' : 'chassis', name, usual);
  const farthest = farthestShift(range);
  const pairs = roomPairs(design, solids, wanted, farthest);
  if (pairs === null || pairs.length === 0) return null;
  const room = roomToMove(pairs, range, MAP_STEPS, (share) => tell(share / 2));
  return freeze({
    range_mm: { forward: range.foreAft, up: range.height },
    clear: room.clear,
    here: { binds: room.here.binds, spare_mm: room.here.spare },
    nearest: placeOf(room.nearest),
    lowest: placeOf(room.lowest),
    highest: placeOf(room.highest),
    roomiest: roomiestOf(room.roomiest),
    sides: room.sides.map(({ toward, by, binds }) => ({ toward, by_mm: by, binds })),
    gives: room.nearest === null ? roomGives(pairs, range, (share) => tell((1 + share) / 2)).map(giveOf) : [],
    map: mapOf(room),
    tilts: tilts.map((noseUp) =>
      tiltRow(noseUp, roomPairs(design, solids, wanted, farthest, noseUp) ?? [], range),
    ),
    proved: room.proved,
    guarantee: GUARANTEE,
  });
};

const tiltRow = (noseUp: number, pairs: readonly RoomPair[], range: ShiftRange): TiltRow => {
  const { here, lowest } = roomAtTilt(pairs, range);
  return {
    nose_up_deg: (noseUp * 180) / Math.PI,
    clear: here.spare >= 0,
    here: { binds: pairs[here.binds]?.name ?? '', spare_mm: here.spare },
    lowest: placeOf(lowest),
  };
};

/** How far the engine is shifted at most, and beyond that what may be asked to give. */
const farthestShift = ({ foreAft, height }: ShiftRange): number =>
  Math.hypot(Math.max(...foreAft.map(Math.abs)), Math.max(...height.map(Math.abs))) + MOST_GIVE;

const placeOf = (place: RoomPlace | null): ShiftPlace | null =>
  place === null ? null : { forward_mm: place.at[0], up_mm: place.at[1], binds: place.binds };

const roomiestOf = (most: EngineRoom['roomiest']): RoomReport['roomiest'] => {
  const place = placeOf(most);
  return most === null || place === null ? null : { ...place, spare_mm: most.spare };
};

const giveOf = ({ obstacle, toward, by, at }: RoomGive): RoomReport['gives'][number] => ({
  obstacle,
  toward,
  by_mm: by,
  forward_mm: at[0],
  up_mm: at[1],
});

const mapOf = ({ map }: EngineRoom): RoomReport['map'] => ({
  forward_mm: map.foreAft,
  up_mm: map.height,
  names: map.names,
  spare_mm: map.spare,
  binds: map.binds,
});
