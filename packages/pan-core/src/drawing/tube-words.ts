import { PanError } from '../errors/index.js';
import type { Vec3 } from '../numeric/index.js';
import { BEND_RADIUS } from '../oil/index.js';
import { type TubeList, tubeBends } from '../sheet/index.js';
import { lines } from './bench-words.js';
import { type CutPlan, headLines } from './cut-plan.js';
import { trimmed } from './part-words.js';

const DEGREES = 180 / Math.PI;

/** The pickup's tube for a bender: length, rotation and angle of every bend, its cut length and its stay. */
export const tubeList = (plan: CutPlan, mouth: Vec3): string => {
  const { pickup, engine } = plan.design;
  const head = headLines(plan, 'pickup tube');
  const port = engine.pumpInlet;
  if (pickup.route.length === 0 || (pickup.route.length < 2 && port === null)) {
    return lines([
      ...head,
      'The route was not given: bend a wire in the mock-up and write it as pickup.route.',
    ]);
  }
  const outside = pickup.bore + 2 * pickup.wall;
  const radius = BEND_RADIUS * outside;
  const list = bendsOrProblem([mouth, ...pickup.route, ...(port === null ? [] : [port])], radius);
  // A tube that cannot be bent this tight stops no sheet from being cut.
  if (list instanceof PanError)
    return lines([
      ...head,
      ...list.problems.flatMap(({ message, advice }) => [message, `> ${advice ?? ''}`]),
    ]);
  return lines([
    ...head,
    `Tube ${trimmed(outside, 1)} x ${trimmed(pickup.wall, 1)} mm; bends at ${trimmed(radius, 1)} mm to the centre line (common practice, no source): ask the bender for its own.`,
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
    `Stay: clamp it ${list.stay.along.toFixed(0)} mm along from the mouth, at ${list.stay.at.map((v) => v.toFixed(0)).join(', ')} mm (x, y, z), to a main cap or the pan’s wall;`,
    'a tube held at the port alone shakes loose or cracks there (common practice, no source). Lock its bolt.',
    'Try it in the mock-up before the mouth is cut to length and the port’s end is flanged.',
  ]);
};

const bendsOrProblem = (route: readonly Vec3[], radius: number): TubeList | PanError => {
  try {
    return tubeBends(route, radius);
  } catch (error) {
    if (error instanceof PanError) return error;
    throw error;
  }
};
