import type { Vec2 } from '../numeric/index.js';

/** Spare room between which limits, from looks taken before; mm. */
export interface KnownRoom<Place> {
  readonly spare: (place: Place, enough?: number) => number;
  /** What a new look could tell at this place: from, to. */
  readonly between: (place: Place) => Vec2;
  /** Whether looks taken before settle that there is as much. */
  readonly isAtLeast: (place: Place, room: number) => boolean;
}

/**
 * Remembers the looks that a search for room takes. Spare room changes no faster than anything moves, so each
 * look holds all around it; against a large scan a look is dear and this is not.
 *
 * @param apart How far nothing moves more than, from one place to another, mm.
 * @param fine A look is less than the true room by this at most, mm.
 */
export const knownRoom = <Place>(
  look: (place: Place, enough: number) => number,
  apart: (a: Place, b: Place) => number,
  fine: number,
): KnownRoom<Place> => {
  const looks: { readonly at: Place; readonly room: number; readonly most: number }[] = [];
  return {
    spare: (place, enough = Number.POSITIVE_INFINITY) => {
      const room = look(place, enough);
      // A look that was told to go no further says nothing of how much more there is.
      looks.push({ at: place, room, most: room < enough ? room : Number.POSITIVE_INFINITY });
      return room;
    },
    isAtLeast: (place, least) =>
      looks.some(({ at, room }) => room - fine >= least && room - fine - apart(at, place) >= least),
    between: (place) => {
      let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
      for (const { at, room, most } of looks) {
        // Most looks say nothing new however near they are.
        if (room - fine <= from && most + fine >= to) continue;
        const by = apart(at, place) + fine;
        if (room - by > from) from = room - by;
        if (most + by < to) to = most + by;
      }
      return [from, to];
    },
  };
};
