import type { Design, Dowel, RailHole } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { circlePath } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import table from './clearance-holes.json' with { type: 'json' };
import type { Mark, RoundHole } from './part.js';

/** Room of a dowel's hole over its dowel, mm: common practice, no source. */
export const DOWEL_ROOM: Readonly<Record<Dowel['fit'], number>> = { close: 0.1, easy: 0.5 };
/** Ring that marks a hole for drilling later, mm: common practice, no source. */
const PILOT_RING = 3;

/** ISO 273 clearance hole for a thread, mm; null outside M5–M12. */
export const clearanceHole = (thread: number, fit: 'fine' | 'medium' | 'coarse'): number | null =>
  table.rows.find((row) => row.thread === thread)?.[fit] ?? null;

/** Medium clearance hole; a thread that the table does not have gets a tenth more than its own diameter. */
export const mediumHole = (thread: number): number => clearanceHole(thread, 'medium') ?? 1.1 * thread;

/** A hole of the flange, pan axes. */
export interface FlangeHole extends RoundHole {
  readonly kind: 'bolt' | 'dowel';
  /** Diameter of the bolt's thread or of the dowel, mm. */
  readonly size: number;
  /** Of a dowel's hole. */
  readonly fit?: Dowel['fit'];
  /** Only marked on the blank, and drilled when the flange is welded and faced. */
  readonly later: boolean;
}

/**
 * Bolt holes by ISO 273, then dowel holes.
 *
 * @throws PanError `input-range` for a thread that the table does not have
 */
export const flangeHoles = (design: Design): readonly FlangeHole[] => {
  const later = ([x, y]: Vec2): boolean =>
    design.pan.flange.drillAfterWeld.some((p) => p[0] === x && p[1] === y);
  return [
    ...design.engine.railHoles.map((hole) => boltHole(design, hole, later(hole.at))),
    ...design.pan.flange.dowels.map(
      (dowel): FlangeHole => ({
        at: dowel.at,
        diameter: dowel.size + DOWEL_ROOM[dowel.fit],
        what: `${dowel.size} mm dowel, ${dowel.fit}`,
        kind: 'dowel',
        size: dowel.size,
        fit: dowel.fit,
        later: later(dowel.at),
      }),
    ),
  ];
};

const boltHole = (design: Design, { at, thread }: RailHole, later: boolean): FlangeHole => {
  const { fit } = design.pan.flange;
  const diameter = clearanceHole(thread, fit);
  if (diameter === null) {
    throw new PanError({
      code: 'input-range',
      path: ['engine', 'rail_holes'],
      message: `There is no clearance hole in the table for an M${thread} bolt.`,
      expected: 'M5, M6, M8, M10 or M12',
      found: `M${thread}`,
      advice: 'Give the size of the rail’s threads as one of these.',
    });
  }
  return { at, diameter, what: `M${thread} clearance, ${fit}`, kind: 'bolt', size: thread, later };
};

/** The hole as parts and tables carry it. */
export const roundHole = ({ at, diameter, what }: FlangeHole): RoundHole => ({ at, diameter, what });

/** A small ring where a hole is drilled later. */
export const pilotMark = ({ at, diameter }: RoundHole): Mark => ({
  path: circlePath(at, PILOT_RING / 2),
  what: `drill ${Number(diameter.toFixed(2))} later`,
});
