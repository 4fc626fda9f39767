import { length3, subtract3, type Vec2, type Vec3 } from '../numeric/index.js';

/** Spare room between which limits, from looks taken before; mm. */
export interface KnownRoom {
  readonly spare: (shift: Vec3, enough?: number) => number;
  /** What a new look could tell at this shift: from, to. */
  readonly between: (shift: Vec3) => Vec2;
}

/**
 * Remembers the looks that a search for room takes. Spare room changes no faster than the engine is shifted, so
 * each look holds all around it; against a large scan a look is dear and this is not.
 *
 * @param fine A look is less than the true room by this at most, mm.
 */
export const knownRoom = (look: (shift: Vec3, enough: number) => number, fine: number): KnownRoom => {
  const looks: { readonly at: Vec3; readonly room: number; readonly most: number }[] = [];
  return {
    spare: (shift, enough = Number.POSITIVE_INFINITY) => {
      const room = look(shift, enough);
      // A look that was told to go no further says nothing of how much more there is.
      looks.push({ at: shift, room, most: room < enough ? room : Number.POSITIVE_INFINITY });
      return room;
    },
    between: (shift) => {
      let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
      for (const { at, room, most } of looks) {
        const by = length3(subtract3(at, shift)) + fine;
        if (room - by > from) from = room - by;
        if (most + by < to) to = most + by;
      }
      return [from, to];
    },
  };
};
