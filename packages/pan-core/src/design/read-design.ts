import { PanError, type Problem } from '../errors/index.js';
import { freeze } from '../numeric/index.js';
import type { Unit } from '../units/index.js';
import type { ReadDesign } from './design.js';
import type { Drawings } from './drawing.js';
import { problemOf, type Reading, refused } from './field/index.js';
import { inNewestFormat, newerFormat } from './format.js';
import { designField } from './keys/design-keys.js';
import { designOf } from './resolve/design-of.js';
import { openNotes } from './resolve/notes.js';

/**
 * Reads a design from plain data (a parsed design file) into mm, mm³, radians, g and seconds, with what was
 * assumed and what is unknown.
 *
 * @param extra units beyond the common ones, from `loadUnits`; `missingUnits` says which are wanted
 * @param drawings what stands in the files that `namedDrawings` says the design names
 * @throws PanError with every problem at once, each with its path; one alone where the file's format is newer
 */
export const readDesign = (
  raw: unknown,
  extra: readonly Unit[] = [],
  drawings: Drawings = {},
): ReadDesign => {
  return designReader(raw, extra, drawings)(raw);
};

/**
 * The same for many designs of one kind of unit: what every reading needs is made ready once.
 *
 * @param like a design in the unit of all that are to be read
 */
export const designReader = (
  like: unknown,
  extra: readonly Unit[] = [],
  drawings: Drawings = {},
): ((raw: unknown) => ReadDesign) => {
  const newer = newerFormat(like);
  if (newer !== null) throw new PanError(newer);
  const field = designField(readingOf(like, extra, () => undefined));
  return (raw) => {
    const problems: Problem[] = [];
    const keys = field.read(inNewestFormat(raw), (fault, place = []) =>
      problems.push(problemOf(fault, place)),
    );
    if (keys === refused || problems.length > 0) throw new PanError(problems);
    const notes = openNotes();
    const { design, rail } = designOf(keys, drawings, notes);
    if (notes.problems.length > 0) throw new PanError(notes.problems);
    return freeze({ design, rail, assumed: notes.assumed, unknown: notes.unknown });
  };
};

/** Unit names in the design that no common unit has; load them with `loadUnits` and read again. */
export const missingUnits = (raw: unknown): readonly string[] => {
  const names = new Set<string>();
  const field = designField(readingOf(raw, [], (name) => names.add(name)));
  field.read(inNewestFormat(raw), () => undefined);
  return [...names];
};

const readingOf = (
  raw: unknown,
  extra: readonly Unit[],
  onMissingUnit: Reading['onMissingUnit'],
): Reading => {
  const declared = typeof raw === 'object' && raw !== null && 'units' in raw ? raw.units : undefined;
  return { units: declared === 'in' ? 'in' : 'mm', extra, onMissingUnit };
};
