import type { LengthUnits } from './command.js';
import type { Measured } from './measured.js';

const MM_PER_INCH = 25.4;
const MM3_PER_L = 1e6;

const decimalsIn = { mm: 1, in: 3 } as const;

/** A number as a person would write it: no trailing zeros. */
const tidy = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

/** Text that YAML reads back as the same text whatever is in it: JSON strings are YAML strings. */
const quoted = (text: string): string => JSON.stringify(text);

/**
 * A first design file from the ten measurements (mm and degrees), in the units the user measures in. What was
 * not measured is written out as a guess or as unknown, so that nothing is taken on trust unseen.
 */
export const starterText = (title: string, measured: Measured, units: LengthUnits): string => {
  const at = (key: string): number => measured[key] ?? 0;
  const n = (mm: number): string => tidy(units === 'in' ? mm / MM_PER_INCH : mm, decimalsIn[units]);
  const rail = at('rail-length');
  const sump = at('sump-length');
  const deep = at('sump-depth');
  const shallow = at('shallow');
  // Guesses of layout, each commented in the file: walls stand this far inside the rail's outer edge.
  const inset = Math.min(30, at('rail-width') / 8);
  const rear = inset;
  const front = rail - inset;
  const width = at('rail-width') - 2 * inset;
  const room = (sump - rear) * width * deep;
  const fill = Math.max(2, Math.round((room / MM3_PER_L) * 1.2) / 2);
  const top = at('crank-centre') + at('stroke') / 2 + 30;
  const mouth = Math.min(60, (sump - rear) / 3);
  const bend = 5;
  return `# yaml-language-server: $schema=./pan-design.schema.json
# A first design from ten measurements. Edit it freely: a line that starts with # is for people only.
# x runs forward from the rear face of the block, y to the left, z up from the rail; "down" is below the rail.
# A number takes the unit below; any number may carry its own, such as 5 1/2 in or 140 mm.
format: 1
title: ${quoted(title)}
units: ${units}

engine:
  rail: {length: ${n(rail)}, width: ${n(at('rail-width'))}, seen_from: unknown}   # below or above: the side it was traced from
  # rail_holes: {size: M8, sides: {y: ${n(at('rail-width') / 2 - 11)}, x_first: ${n(15)}, x_last: ${n(rail - 15)}, count: 12}}
  crankcase_top: ${n(top)}   # a guess: closed height above the rail that oil can climb into
  crank:
    centre_above_rail: ${n(at('crank-centre'))}
    stroke: ${n(at('stroke'))}
    big_end_reach: ${n(at('big-end'))}
    throws: unknown   # x of each throw from the rear face of the block, such as [${n(70)}, ${n(172)}, ${n(274)}]
  tilt: {nose_up: ${tidy(at('nose-up'), 2)} deg, lean_left: unknown}   # an engine that stands upright leans 0 deg

oil:
  fill: ${tidy(fill, 1)} L   # a guess: three fifths of the sump; what will be poured in, filter included
  pump: unknown   # flow at the speed of the cornering, such as 45 L/min

pan:
  floor_inside:   # [x, down] from front to rear; the walls at both ends rise to the rail by themselves
    - [${n(front)}, ${n(shallow)}]   # a guess: the front wall, ${n(inset)} ${units} behind the front of the rail
    - [${n(sump)}, ${n(shallow)}]
    - [${n(sump)}, ${n(deep)}]
    - [${n(rear)}, ${n(deep)}]   # a guess: the rear wall, ${n(inset)} ${units} ahead of the rear face
  width_inside: ${n(width)}   # a guess: ${n(inset)} ${units} inside the rail on each side
  sheet: {material: aluminium 5052-H32, thickness: 3 mm, bend_radius: ${bend} mm}
  flange: {thickness: 10 mm}

pickup: {at: [${n(rear + (sump - rear) * 0.4)}, 0], gap: 8 mm, mouth: ${n(mouth)}, bore: 22 mm}   # a guess: [x, y] of the mouth’s centre

# baffles:   # a lid over the sump and a wall across it with a door that lets oil rearward
#   - {name: lid, lid_down: ${n(shallow + 25)}, rear: ${n(rear + (sump - rear) * 0.3)}, front: ${n(sump - 5)}, fixed: bolted}

chassis:
  axes: car   # measured on the level car; pan: measured square to the rail
  ground: ${n(-at('ground'))}
  # obstacles:
  #   - {name: crossmember, box: [[${n(sump + 40)}, ${n(-400)}, ${n(-deep)}], [${n(sump + 130)}, ${n(400)}, ${n(-shallow - 20)}]], clear: 15 mm}

manoeuvres:
  - {name: hard stop, braking: 1.0 g, for: 4 s}
  - {name: long left, left_turn: 0.8 g, for: 4 s}
  - {name: long right, right_turn: 0.8 g, for: 4 s}
`;
};
