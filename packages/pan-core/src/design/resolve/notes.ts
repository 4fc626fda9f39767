import type { Problem } from '../../errors/index.js';
import { type QuantityKind, readQuantity } from '../../units/index.js';
import { type DefaultName, defaultNamed } from '../default.js';
import type { Assumption, Unknown } from '../design.js';
import { type Fault, type Place, problemOf } from '../field/index.js';

/** What was taken for granted and what is missing, gathered while a design is resolved. */
export interface Notes {
  readonly assumed: Assumption[];
  readonly unknown: Unknown[];
  /** The value given, or the default of that name, noted; in the kind's inside unit. */
  readonly take: (given: number | undefined, path: Place, kind: QuantityKind, name: DefaultName) => number;
  /** The word given, or the default of that name, noted. */
  readonly takeWord: <W extends string>(given: W | undefined, path: Place, name: DefaultName) => W;
  readonly assume: (path: Place, value: string, why: string) => void;
  readonly lack: (path: Place, what: string, needed: string) => void;
  /** What reads well by itself and cannot be with the rest of the file, or with a drawing it names. */
  readonly problems: Problem[];
  readonly refuse: (path: Place, fault: Fault) => void;
}

export const openNotes = (): Notes => {
  const assumed: Assumption[] = [];
  const unknown: Unknown[] = [];
  const problems: Problem[] = [];
  const assume: Notes['assume'] = (path, value, why) => {
    assumed.push({ path, value, why });
  };
  return {
    assumed,
    unknown,
    problems,
    refuse: (path, fault) => {
      problems.push(problemOf(fault, path));
    },
    assume,
    lack: (path, what, needed) => {
      unknown.push({ path, what, needed });
    },
    take: (given, path, kind, name) => {
      if (given !== undefined) return given;
      const { value, why } = defaultNamed(name);
      assume(path, value, why);
      return defaultQuantity(name, kind);
    },
    takeWord: <W extends string>(given: W | undefined, path: Place, name: DefaultName): W => {
      if (given !== undefined) return given;
      const { value, why } = defaultNamed(name);
      assume(path, value, why);
      return value as W;
    },
  };
};

/** A default in its kind's inside unit. */
export const defaultQuantity = (name: DefaultName, kind: QuantityKind): number => {
  const { value } = defaultNamed(name);
  const read = readQuantity(value, kind, null);
  if (!read.ok) throw new Error(`default "${name}" is ${value}, no ${kind}`);
  return read.value;
};
