import { mapPoint } from '../../geometry/index.js';
import { readQuantity } from '../../units/index.js';
import type { Point2 } from '../design.js';
import type { Drawing, Drawings } from '../drawing.js';
import type { Place, ValueOf } from '../field/index.js';
import { DRAWING_KEYS, type railField } from '../keys/rail-keys.js';
import { type DrawnRail, drawnRail, type Placing, placingMap } from '../rail-outline.js';
import type { Notes } from './notes.js';

export type RailKeys = ValueOf<ReturnType<typeof railField>>;

/** Where drawings come from, and the unit of one that has none of its own. */
export interface DrawingDesk {
  readonly units: 'mm' | 'in';
  readonly drawings: Drawings;
}

/** The drawings of a rail, laid on its page. */
export interface RailDrawings {
  /** What stands on a drawing; null after saying why there is nothing. */
  readonly open: (path: Place, name: string, layer: string | undefined) => DrawnRail | null;
  /** A point as drawn, mm, on the page. */
  readonly onPage: (point: Point2) => Point2;
}

const RAIL = ['engine', 'rail'];
const SIDES = { right: [1, 0], up: [0, 1], left: [-1, 0], down: [0, -1] } as const;
/** A scanner is out by a few per cent at most; more is a slip of a unit. */
const MOST_SCALE = 1.5;

export const railDrawings = (keys: RailKeys, desk: DrawingDesk, notes: Notes): RailDrawings => {
  let placing: Omit<Placing, 'unit'> | null = null;
  let close: number | null = null;
  const placed = (): Omit<Placing, 'unit'> => {
    placing ??= placingOf(keys, notes);
    return placing;
  };
  return {
    onPage: (point) => mapPoint(placingMap({ unit: 1, ...placed() }), point),
    open: (path, name, layer) => {
      const drawing = Object.hasOwn(desk.drawings, name) ? desk.drawings[name] : undefined;
      if (drawing === undefined) {
        const advice = 'Put it beside the design file, or write the points as a list.';
        notes.refuse(path, { code: 'file-read', says: `names ${name}, which was not read`, advice });
        return null;
      }
      if (layer !== undefined && !drawing.curves.some((one) => one.layer === layer)) {
        const layers = [...new Set(drawing.curves.map((one) => one.layer))].slice(0, 8).join(', ');
        const says = `is ${layer}, and ${name} has nothing on it that can be read`;
        notes.refuse([...path.slice(0, -1), 'layer'], {
          code: 'input-key',
          says,
          expected: `one of: ${layers}`,
        });
        return null;
      }
      const unit = unitOf(keys, drawing, name, desk.units, notes);
      close ??= notes.take(keys.close_gaps, [...RAIL, 'close_gaps'], 'length', 'close gaps');
      return drawnRail(drawing, { unit, ...placed() }, close, layer ?? null);
    },
  };
};

const placingOf = (keys: RailKeys, notes: Notes): Omit<Placing, 'unit'> => {
  const { origin, forward, calibrate } = keys;
  if (origin === undefined) notes.takeWord(undefined, [...RAIL, 'origin'], 'drawing origin');
  const from: Point2 = origin ?? [0, 0];
  const way =
    forward ?? notes.takeWord<keyof typeof SIDES>(undefined, [...RAIL, 'forward'], 'drawing forward');
  const toward: Point2 = typeof way === 'string' ? SIDES[way] : [way[0] - from[0], way[1] - from[1]];
  if (toward[0] === 0 && toward[1] === 0) {
    const says = 'is the same point as origin';
    notes.refuse([...RAIL, 'forward'], { code: 'input-range', says, expected: 'a point ahead of it' });
  }
  const scale = (axis: 'x' | 'y'): number => {
    const [drawn, real] = calibrate?.[axis] ?? [1, 1];
    const by = real / drawn;
    if (by > MOST_SCALE || by < 1 / MOST_SCALE) {
      const says = `makes lengths ${by.toPrecision(3)} times what was drawn; a scanner is out by a few per cent`;
      const advice = 'Look at the two numbers, and set drawn_in for a drawing in another unit.';
      notes.refuse([...RAIL, 'calibrate', axis], {
        code: 'input-range',
        says,
        value: by,
        limit: MOST_SCALE,
        advice,
      });
    }
    return by;
  };
  return { scale: [scale('x'), scale('y')], origin: from, forward: toward };
};

const unitOf = (
  keys: RailKeys,
  drawing: Drawing,
  name: string,
  units: DrawingDesk['units'],
  notes: Notes,
): number => {
  const word = keys.drawn_in ?? (drawing.unit === null ? units : null);
  if (word === null) return drawing.unit ?? 1;
  const known = keys.drawn_in !== undefined || notes.assumed.some(({ path }) => path.at(-1) === 'drawn_in');
  if (!known) notes.assume([...RAIL, 'drawn_in'], word, `${name} does not say; taken as the file’s own unit`);
  const size = readQuantity(`1 ${word}`, 'length', null);
  return size.ok ? size.value : 1;
};

/** Keys that place a drawing mean nothing without one. */
export const refuseDrawingKeys = (keys: RailKeys, notes: Notes): void => {
  for (const key of DRAWING_KEYS) {
    if (keys[key] === undefined) continue;
    notes.refuse([...RAIL, key], {
      code: 'input-key',
      says: 'says how a drawing lies, and no drawing is named',
      expected: 'outline or rail_holes.drawing to name a file',
    });
  }
};
