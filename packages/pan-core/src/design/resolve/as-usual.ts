import type { DefaultName } from '../default.js';
import type { Place } from '../field/index.js';
import type { Notes } from './notes.js';

/** The thickness given, or that of the pan's own sheet, noted; mm. */
export const thicknessOf = (
  given: number | undefined,
  sheetThickness: number,
  path: Place,
  notes: Notes,
): number => {
  if (given !== undefined) return given;
  notes.assume(path, `${sheetThickness} mm`, 'common practice, no source: cut from the same sheet');
  return sheetThickness;
};

/** The thread given, or the default of that name, noted; `M6` is 6. */
export const boltOf = (given: number | undefined, path: Place, name: DefaultName, notes: Notes): number =>
  given ?? Number(notes.takeWord<string>(undefined, path, name).slice(1));
