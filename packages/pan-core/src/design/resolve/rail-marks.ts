import type { Point2, Point3, RailHole } from '../design.js';
import type { MarkSurvey, SurveyedMark } from '../rail-survey.js';
import type { Notes } from './notes.js';
import type { RailKeys } from './rail-drawing.js';

/** A mark by tape agrees with a drawing within this, mm; common practice, no source. */
const AGREES = 10;

interface MarkScene {
  readonly holes: readonly RailHole[];
  readonly pumpInlet: Point3 | undefined;
  /** From a point as drawn to the car. */
  readonly onCar: (drawn: Point2) => Point2;
}

/** Compares each mark's two places, as the rail was read and with it turned over. */
export const surveyMarks = (
  marks: NonNullable<RailKeys['marks']>,
  { holes, pumpInlet, onCar }: MarkScene,
  notes: Notes,
): MarkSurvey | null => {
  const surveyed: SurveyedMark[] = [];
  marks.forEach(({ name, drawn, hole, at }, i) => {
    const path = ['engine', 'rail', 'marks', i];
    const place = at ?? (pumpInlet === undefined ? null : ([pumpInlet[0], pumpInlet[1]] as const));
    if (place === null) {
      const expected = 'its place on the engine, or engine.pump_inlet';
      notes.refuse([...path, 'at'], {
        code: 'input-missing',
        says: 'is missing',
        expected,
        found: 'nothing',
      });
      return;
    }
    const from = drawn === undefined ? holes[(hole ?? 0) - 1]?.at : onCar(drawn);
    if (from === undefined) {
      const says = `is ${hole}, and there are ${holes.length} holes`;
      notes.refuse([...path, 'hole'], { code: 'input-range', says });
      return;
    }
    const off = (y: number): number => Math.hypot(from[0] - place[0], y - place[1]);
    surveyed.push({
      name,
      drawn: from,
      at: [place[0], place[1]],
      off: off(from[1]),
      offTurned: off(-from[1]),
    });
  });
  return surveyed.length === 0 ? null : { marks: surveyed, says: whatTheySay(surveyed) };
};

const whatTheySay = (marks: readonly SurveyedMark[]): MarkSurvey['says'] => {
  const asRead = marks.every(({ off }) => off <= AGREES);
  const turned = marks.every(({ offTurned }) => offTurned <= AGREES);
  if (asRead && turned) return 'cannot tell';
  if (asRead) return 'agrees';
  return turned ? 'mirrored' : 'neither';
};
