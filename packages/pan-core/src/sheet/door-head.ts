import type { Design, Door } from '../design/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import practice from './door-practice.json' with { type: 'json' };
import { atLeast, type SheetFinding } from './finding.js';

/** By how much a door's flap covers the edge of its opening, mm. */
export const FLAP_LAND = practice.flap_land_mm;
/** Height of the band above the land that carries the hinge, mm. */
export const HINGE_BAND = practice.hinge_band_mm;
/** Foot of a door's stop on its wall where there is room for it, mm. */
export const STOP_FOOT = { length: practice.stop_foot_mm, width: practice.stop_width_mm } as const;
/** A shorter foot is not worth welding, mm. */
const LEAST_FOOT = practice.stop_least_foot_mm;

/** The wall over a door's opening, in the plate's own axes, mm. */
export interface DoorHead {
  readonly door: Door;
  /** Metal over the opening, on the narrowest part of the flap's width. */
  readonly room: number;
  /** Where the foot of the stop stands over the hinge: left to right, foot to head; null where there is no metal. */
  readonly foot: { readonly across: Vec2; readonly up: Vec2 } | null;
}

/** What stands over each door of a wall; none for a lid. */
export const doorHeads = ({ baffle, openings, outlines }: Plate): readonly DoorHead[] => {
  if (baffle.kind !== 'wall') return [];
  const doors = openings.filter(({ kind }) => kind === 'door');
  return baffle.doors.flatMap((door, i): readonly DoorHead[] => {
    const opening = doors[i]?.outline;
    if (opening === undefined) return [];
    const us = opening.map(([u]) => u);
    const [left, right] = [Math.min(...us), Math.max(...us)];
    const [middle, top] = [(left + right) / 2, Math.max(...opening.map(([, v]) => v))];
    const heads = [left - FLAP_LAND, left, middle, right, right + FLAP_LAND]
      .map((u) => headOver(outlines, u, top))
      .filter((v) => v !== null);
    const room = heads.length === 0 ? 0 : Math.min(...heads) - top;
    const hinge = FLAP_LAND + HINGE_BAND;
    const long = Math.min(STOP_FOOT.length, room - hinge);
    return [
      {
        door,
        room,
        foot:
          long <= 0
            ? null
            : {
                across: [middle - STOP_FOOT.width / 2, middle + STOP_FOOT.width / 2],
                up: [top + hinge, top + hinge + long],
              },
      },
    ];
  });
};

/** Lowest edge of the sheet straight over a place; null where it has none there. */
const headOver = (outlines: Plate['outlines'], u: number, v: number): number | null => {
  const over = outlines.flatMap((loop) =>
    loop.flatMap((a, i) => {
      const b = loop[(i + 1) % loop.length]!;
      if (a[0] > u === b[0] > u) return [];
      const at = a[1] + ((b[1] - a[1]) * (u - a[0])) / (b[0] - a[0]);
      return at > v ? [at] : [];
    }),
  );
  return over.length === 0 ? null : Math.min(...over);
};

/** Whether every door has the wall over it that its hinge and its stop are fixed to. */
export const doorFindings = (design: Design, plates: readonly Plate[]): readonly SheetFinding[] => {
  const heads = plates.flatMap((plate) =>
    doorHeads(plate).map((head) => ({ wall: plate.baffle.name, head })),
  );
  if (heads.length === 0) return [];
  const { wall, head } = heads.reduce((a, b) => (b.head.room < a.head.room ? b : a));
  const hinge = FLAP_LAND + HINGE_BAND;
  return [
    atLeast(design, {
      id: 'door_head',
      title: 'wall over the doors',
      value: head.room,
      limit: hinge + LEAST_FOOT,
      unit: 'mm',
      below: 'warn',
      because: `over the door of ${wall} at ${head.door.at.toFixed(0)}: ${hinge} mm for the hinge and ${LEAST_FOOT} mm at least for the stop’s foot (common practice, no source)`,
      try: (short) =>
        `Make it ${Math.ceil(short)} mm less tall, lower it, raise the wall’s top, or hang flap and stop from the lid.`,
    }),
  ];
};
