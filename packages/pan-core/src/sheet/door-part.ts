import type { Design, Door, Wall } from '../design/index.js';
import { lineSegment, polylinePath } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import { angleStrip, stripPart } from './angle-strip.js';
import { doorHeads, FLAP_LAND, HINGE_BAND, STOP_FOOT } from './door-head.js';
import practice from './door-practice.json' with { type: 'json' };
import { finishPart } from './finish.js';
import type { Part } from './part.js';

/** Flap, hinge strip and stop for the doors of a wall, all in the wall's own sheet; like doors share a drawing. */
export const doorParts = (design: Design, plate: Plate): readonly Part[] => {
  const { baffle } = plate;
  if (baffle.kind !== 'wall') return [];
  const kinds: { door: Door; foot: number; count: number }[] = [];
  for (const { door, foot } of doorHeads(plate)) {
    const long = foot === null ? STOP_FOOT.length : foot.up[1] - foot.up[0];
    const same = kinds.find(
      (k) => k.door.size.join() === door.size.join() && k.door.letsOil === door.letsOil,
    );
    if (same === undefined) kinds.push({ door, foot: long, count: 1 });
    else {
      same.count++;
      same.foot = Math.min(same.foot, long);
    }
  }
  return kinds.flatMap(({ door, foot, count }, i) => {
    const name = kinds.length === 1 ? `${baffle.name} door` : `${baffle.name} door ${i + 1}`;
    return [
      flap(design, baffle, door, name),
      hingeStrip(design, baffle, door, name),
      stop(design, baffle, foot, name),
    ].map((part): Part => ({ ...part, quantity: count }));
  });
};

const rectangle = (width: number, height: number): readonly Vec2[] => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

const rivets = (width: number, y: number): Part['holes'] =>
  [practice.rivet_inset_mm, width - practice.rivet_inset_mm].map((x) => ({
    at: [x, y] as const,
    diameter: practice.rivet_hole_mm,
    what: 'rivet',
  }));

const flap = (design: Design, wall: Wall, door: Door, name: string): Part => {
  const [w, h] = door.size;
  const width = w + 2 * FLAP_LAND;
  const hingeLine = h + 2 * FLAP_LAND;
  return finishPart({
    name: `${name} flap`,
    what: `Flap that lets oil pass ${door.letsOil} only.`,
    quantity: 1,
    material: design.pan.sheet.material,
    thickness: wall.thickness,
    drawnFace: 'either',
    outline: polylinePath(rectangle(width, hingeLine + HINGE_BAND), true),
    openings: [],
    holes: rivets(width, hingeLine + HINGE_BAND / 2),
    folds: [],
    marks: [
      { path: [lineSegment([0, hingeLine], [width, hingeLine])], what: 'hinge pin' },
      {
        path: polylinePath(
          rectangle(w, h).map(([x, y]) => [x + FLAP_LAND, y + FLAP_LAND]),
          true,
        ),
        what: 'opening',
      },
    ],
    notes: [
      `Covers the opening by ${FLAP_LAND} mm all round (common practice, no source); hangs on the ${door.letsOil} side.`,
      'Hang it on a steel piano hinge at the marked line; peen or weld the pin so that it cannot walk out.',
    ],
  });
};

const hingeStrip = (design: Design, wall: Wall, door: Door, name: string): Part => {
  const width = door.size[0] + 2 * FLAP_LAND;
  return finishPart({
    name: `${name} hinge strip`,
    what: 'Clamps the hinge’s leaf to the wall above the opening.',
    quantity: 1,
    material: design.pan.sheet.material,
    thickness: wall.thickness,
    drawnFace: 'either',
    outline: polylinePath(rectangle(width, HINGE_BAND), true),
    openings: [],
    holes: rivets(width, HINGE_BAND / 2),
    folds: [],
    marks: [],
    notes: ['Drill the wall through these holes on fitting.'],
  });
};

const stop = (design: Design, wall: Wall, room: number, name: string): Part => {
  const foot = STOP_FOOT.length;
  const arm = practice.stop_arm_mm;
  const strip = angleStrip(design, wall.thickness, 'stop', {
    width: practice.stop_width_mm,
    legs: [foot, arm],
    measured: 'inside',
    angle: (practice.stop_angle_deg * Math.PI) / 180,
  });
  return stripPart(design, wall.thickness, strip, {
    name: `${name} stop`,
    what: 'Keeps the flap from swinging so far that it hangs open.',
    quantity: 1,
    holes: [],
    notes: [
      `Foot ${Number(foot.toFixed(1))} mm, arm ${arm} mm, both inside lengths; K ${strip.k}. Weld the foot to the wall above the hinge.`,
      // A leg must be long enough for the brake before it may be as short as the wall asks.
      ...(room < foot - 0.05
        ? [`The wall ends over the hinge: cut the foot back to ${room.toFixed(0)} mm once it is folded.`]
        : []),
      `The flap stops at about ${practice.stop_angle_deg} deg (common practice, no source); try it by hand.`,
    ],
  });
};
