import type { Rock } from './least-gap.js';
import { type ScanPlace, turnedPlace } from './scan-place.js';

/** Turns smaller than this move nothing, radians. */
export const NO_TURN = 1e-9;

/** A stretch of the engine's turn: ± half about an angle, and the scan as seen at that angle. */
export interface Stretch {
  readonly angle: number;
  readonly half: number;
  /** 2·sin(half/2): how far a point comes from its middle place, for each mm from the crank's axis. */
  readonly chord: number;
  readonly place: ScanPlace;
}

export interface Stretches {
  /** Both ends of the turn, where the worst mostly lies, and then all of it. */
  readonly first: readonly Stretch[];
  readonly halvesOf: (stretch: Stretch) => readonly Stretch[];
}

/** The stretches of a rock, each made once; the scan turns the other way as seen from the engine. */
export const stretchesOf = (place: ScanPlace, rock: Rock): Stretches => {
  const make = (angle: number, half: number): Stretch => ({
    angle,
    half,
    chord: 2 * Math.sin(half / 2),
    place: turnedPlace(place, rock.height, -angle),
  });
  const made = new Map<Stretch, readonly Stretch[]>();
  return {
    first: rock.angle === 0 ? [make(0, 0)] : [make(-rock.angle, 0), make(rock.angle, 0), make(0, rock.angle)],
    halvesOf: (stretch) => {
      const known = made.get(stretch);
      if (known !== undefined) return known;
      const half = stretch.half / 2;
      const halves = [make(stretch.angle - half, half), make(stretch.angle + half, half)];
      made.set(stretch, halves);
      return halves;
    },
  };
};
