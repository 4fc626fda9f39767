import { type Design, STAY } from '../../design/index.js';
import { PanError } from '../../errors/index.js';
import {
  BEND_RADIUS,
  type Profile,
  pickupStay,
  pickupTube,
  type TubeList,
  tubeOutside,
} from '../../pan/index.js';
import { type CutPlan, headLines } from '../cut-plan.js';
import { trimmed } from '../part-words.js';
import { lines } from './bench-words.js';

const DEGREES = 180 / Math.PI;

/** The pickup's tube for a bender: length, rotation and angle of every bend, its cut length and its stay. */
export const tubeList = (plan: CutPlan, profile: Profile): string => {
  const { design } = plan;
  const head = headLines(plan, 'pickup tube');
  const list = bendsOrProblem(design, profile);
  if (list === null) {
    return lines([
      ...head,
      'The route was not given: bend a wire in the mock-up and write it as pickup.route.',
    ]);
  }
  // A tube that cannot be bent this tight stops no sheet from being cut.
  if (list instanceof PanError)
    return lines([
      ...head,
      ...list.problems.flatMap(({ message, advice }) => [message, `> ${advice ?? ''}`]),
    ]);
  const port = design.engine.pumpInlet;
  const outside = tubeOutside(design);
  const radius = BEND_RADIUS * outside;
  return lines([
    ...head,
    `Tube ${trimmed(outside, 1)} x ${trimmed(design.pickup.wall, 1)} mm; bends at ${trimmed(radius, 1)} mm to the centre line (common practice, no source): ask the bender for its own.`,
    `Cut ${list.cut.toFixed(0)} mm along the centre line, from mouth to ${port === null ? 'the end of the route' : 'pump port'}, and leave 100 mm to hold in the bender.`,
    'From the mouth: feed the length, turn the tube clockwise seen along it from the mouth, bend.',
    '',
    '    bend  length mm  rotation deg  angle deg',
    ...list.steps.map(
      ({ length, rotation, angle }, i) =>
        `    ${String(i + 1).padStart(4)}  ${length.toFixed(1).padStart(9)}  ${(rotation * DEGREES).toFixed(1).padStart(12)}  ${(angle * DEGREES).toFixed(1).padStart(9)}`,
    ),
    `    last  ${list.last.toFixed(1).padStart(9)}`,
    '',
    ...stayWords(design, profile, list),
    'Try it in the mock-up before the mouth is cut to length and the port’s end is flanged.',
  ]);
};

const stayWords = (design: Design, profile: Profile, list: TubeList): readonly string[] => {
  const stay = pickupStay(design, profile);
  const { at, along } = stay?.clip ?? list.stay;
  const middle = `${along.toFixed(0)} mm along from the mouth, at ${at.map((v) => v.toFixed(0)).join(', ')} mm (x, y, z)`;
  return stay === null
    ? [
        `Stay: clamp it ${middle}, to a main cap or another bolt of the engine: the pan comes off past it.`,
        'Write that bolt as pickup.stay and the stay is cut with the rest. A tube held at the port alone shakes',
        'loose or cracks there (common practice, no source).',
      ]
    : [
        `Stay: its clip holds the tube ${middle}; the part is "${STAY}".`,
        'Lock both of its bolts: a tube held at the port alone shakes loose or cracks there (common practice, no source).',
      ];
};

/** The tube as it is bent, why it cannot be, or null where its way is not given. */
export const bendsOrProblem = (design: Design, profile: Profile): TubeList | PanError | null => {
  try {
    return pickupTube(design, profile);
  } catch (error) {
    if (error instanceof PanError) return error;
    throw error;
  }
};
