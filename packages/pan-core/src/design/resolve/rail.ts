import type { Point2, Point3, Rail, RailHole } from '../design.js';
import type { ValueOf } from '../field/index.js';
import type { railHolesField } from '../keys/rail-hole-keys.js';
import { signedDoubleArea } from '../outline.js';
import type { DistanceSurvey, RailSurvey } from '../rail-survey.js';
import { drawnHoles } from './drawn-holes.js';
import { drawnNote, drawnOutline } from './drawn-outline.js';
import { type DistanceKeys, holesFromDistances, roughHoles } from './hole-distances.js';
import type { Notes } from './notes.js';
import {
  type DrawingDesk,
  type RailDrawings,
  type RailKeys,
  railDrawings,
  refuseDrawingKeys,
} from './rail-drawing.js';
import { surveyMarks } from './rail-marks.js';

export type RailHolesKeys = ValueOf<ReturnType<typeof railHolesField>>;
type HoleKeys = Exclude<RailHolesKeys, readonly unknown[]>;

interface RailPage {
  readonly keys: RailKeys;
  readonly holeKeys: RailHolesKeys | undefined;
  readonly pumpInlet: Point3 | undefined;
}

export interface ResolvedRail {
  readonly rail: Rail;
  readonly holes: readonly RailHole[];
  /** null where there is nothing to say of how it was measured. */
  readonly survey: RailSurvey | null;
}

const RAIL = ['engine', 'rail'];
const HOLES = ['engine', 'rail_holes'];

/**
 * Rail points are written as they stand on the drawing or trace with x up the page, toward the front of
 * the car, and y positive to the left of the page. Seen from above, the left of the page is the left of the
 * car; seen from below it is the right, so y changes sign on reading. Not said, it is read as from above.
 */
export const resolveRail = (page: RailPage, desk: DrawingDesk, notes: Notes): ResolvedRail => {
  const { keys, holeKeys, pumpInlet } = page;
  // 0 − y rather than −y: a mirrored 0 stays +0.
  const onCar = ([x, y]: Point2): Point2 => [x, keys.seen_from === 'below' ? 0 - y : y];
  const drawings = railDrawings(keys, desk, notes);
  const outline = outlineOnPage(keys, drawings, desk, notes);
  const found = holesOnPage(holeKeys, keys, outline, drawings, notes);
  const points = outline.map(onCar);
  const holes = found.holes.map((hole) => ({ ...hole, at: onCar(hole.at) }));
  const named = typeof keys.outline === 'string' || (isPattern(holeKeys) && holeKeys.drawing !== undefined);
  if (!named) refuseDrawingKeys(keys, notes);
  const onPage = named ? drawings.onPage : (point: Point2): Point2 => point;
  const scene = { holes, pumpInlet, onCar: (drawn: Point2) => onCar(onPage(drawn)) };
  const marks = keys.marks === undefined ? null : surveyMarks(keys.marks, scene, notes);
  const distances =
    found.distances === null
      ? null
      : { ...found.distances, holes: found.distances.holes.map((hole) => ({ ...hole, at: onCar(hole.at) })) };
  const survey: RailSurvey = {
    distances,
    rough: isPattern(holeKeys) ? roughHoles(holeKeys) : null,
    marks,
  };
  const says = distances !== null || survey.rough !== null || marks !== null;
  return {
    rail: {
      outline: signedDoubleArea(points) > 0 ? points : [...points].reverse(),
      land: notes.take(keys.land, [...RAIL, 'land'], 'length', 'rail land'),
      seenFrom: keys.seen_from ?? null,
    },
    holes,
    survey: says ? survey : null,
  };
};

const rectangle = (length: number, width: number): readonly Point2[] => [
  [0, -width / 2],
  [length, -width / 2],
  [length, width / 2],
  [0, width / 2],
];

const outlineOnPage = (
  keys: RailKeys,
  drawings: RailDrawings,
  desk: DrawingDesk,
  notes: Notes,
): readonly Point2[] => {
  const { outline } = keys;
  if (outline === undefined) return rectangle(keys.length ?? 0, keys.width ?? 0);
  if (typeof outline !== 'string') return outline;
  const path = [...RAIL, 'outline'];
  const drawn = drawings.open(path, outline, keys.layer);
  const points = drawn === null ? null : drawnOutline(drawn, path, notes);
  // Anything closed will do once a problem has been noted: the reader stops before it is used.
  if (drawn === null || points === null) return rectangle(SHORTEST_RAIL, SHORTEST_RAIL);
  notes.assume(
    path,
    `${points.length} corners`,
    drawnNote(outline, drawn, desk.drawings[outline]?.passedOver ?? []),
  );
  return points;
};

const SHORTEST_RAIL = 100;

interface FoundHoles {
  readonly holes: readonly RailHole[];
  readonly distances: DistanceSurvey | null;
}

const holesOnPage = (
  keys: RailHolesKeys | undefined,
  rail: RailKeys,
  outline: readonly Point2[],
  drawings: RailDrawings,
  notes: Notes,
): FoundHoles => {
  if (keys === undefined) return { holes: [], distances: null };
  if (!isPattern(keys)) return { holes: keys.map(({ at, size }) => ({ at, thread: size })), distances: null };
  const { size } = keys;
  const patterned = patternOf(keys, outline).map((at) => ({ at, thread: size ?? 0 }));
  const drawn =
    keys.drawing === undefined ? [] : fromDrawing(keys, keys.drawing, rail, outline, drawings, notes);
  const distances =
    keys.distances === undefined
      ? null
      : holesFromDistances({ ...distanceKeys(keys), distances: keys.distances }, HOLES, notes);
  const measured = (distances?.holes ?? []).map(({ at }) => ({ at, thread: size ?? 0 }));
  return {
    holes: [...measured, ...drawn, ...patterned],
    distances,
  };
};

const distanceKeys = (keys: HoleKeys): DistanceKeys => keys;

const fromDrawing = (
  keys: HoleKeys,
  name: string,
  rail: RailKeys,
  outline: readonly Point2[],
  drawings: RailDrawings,
  notes: Notes,
): readonly RailHole[] => {
  const path = [...HOLES, 'drawing'];
  const before = notes.problems.length;
  const drawn = drawings.open(path, name, keys.layer);
  // An outline that could not be read says nothing about where holes may be.
  if (drawn === null || notes.problems.length > before) return [];
  const edge = rail.outline === undefined || before > 0 ? null : outline;
  const { holes, left } = drawnHoles(
    drawn.holes,
    { size: keys.size, sizes: keys.sizes ?? [] },
    edge,
    path,
    notes,
  );
  notes.assume(path, `${holes.length} holes`, [`as drawn in ${name}`, ...left].join('; '));
  return holes;
};

const patternOf = ({ sides, ends, at }: HoleKeys, outline: readonly Point2[]): readonly Point2[] => {
  const points: Point2[] = [];
  if (sides !== undefined) {
    const step = (sides.x_last - sides.x_first) / (sides.count - 1);
    for (const y of [-sides.y, sides.y]) {
      for (let i = 0; i < sides.count; i++) {
        points.push([i === sides.count - 1 ? sides.x_last : sides.x_first + i * step, y]);
      }
    }
  }
  if (ends !== undefined) {
    const xs = outline.map(([x]) => x);
    for (const x of [Math.min(...xs) + ends.inset, Math.max(...xs) - ends.inset]) {
      for (const y of ends.y) points.push([x, y]);
    }
  }
  return [...points, ...(at ?? [])];
};

const isPattern = (keys: RailHolesKeys | undefined): keys is HoleKeys =>
  keys !== undefined && !Array.isArray(keys);

/** Whether turning the rail over would change it, so that its side must be known. */
export const needsSide = (keys: RailKeys, holes: readonly RailHole[]): boolean =>
  keys.outline !== undefined ||
  holes.some(
    ({ at: [x, y] }) => !holes.some(({ at }) => Math.abs(at[0] - x) < 1e-6 && Math.abs(at[1] + y) < 1e-6),
  );
