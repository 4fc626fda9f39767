import { defaultNamed } from '../default.js';
import type { Load, Manoeuvre } from '../design.js';
import type { DesignKeys } from '../keys/design-keys.js';
import { type PresetName, presetManoeuvres } from '../manoeuvre-preset.js';
import type { Notes } from './notes.js';

type Entry = NonNullable<DesignKeys['manoeuvres']>[number];
type Case = Exclude<Entry, { readonly preset: PresetName }>;

export const resolveManoeuvres = (
  entries: readonly Entry[] | undefined,
  oil: DesignKeys['oil'],
  notes: Notes,
): readonly Manoeuvre[] => {
  if (entries !== undefined) {
    return entries.flatMap((entry, i) =>
      'preset' in entry ? presetManoeuvres(entry.preset) : [caseOf(entry, i, oil, notes)],
    );
  }
  const { value, why } = defaultNamed('manoeuvres');
  notes.assume(['manoeuvres'], value, why);
  return presetManoeuvres(value as PresetName);
};

const caseOf = (keys: Case, index: number, oil: DesignKeys['oil'], notes: Notes): Manoeuvre => ({
  name: keys.name,
  ...speedOf(keys.rpm, index, oil, notes),
  ...loadOf(keys),
  seconds: notes.take(keys.for, ['manoeuvres', index, 'for'], 'time', 'manoeuvre time'),
  via: (keys.via ?? []).map(loadOf),
});

/** What is given by engine speed is taken at the highest where a case does not say its own. */
const speedOf = (
  rpm: number | undefined,
  index: number,
  { held_up, pump }: DesignKeys['oil'],
  notes: Notes,
): Pick<Manoeuvre, 'rpm'> => {
  const curves = [held_up, pump].filter((given) => typeof given === 'object' && given !== null);
  const path = ['manoeuvres', index, 'rpm'];
  if (curves.length === 0) {
    if (rpm === undefined) return {};
    notes.assume(path, `${rpm} rev/min`, 'held-up oil and pump flow are given as one value for every speed');
    return { rpm };
  }
  if (rpm !== undefined) return { rpm };
  const highest = Math.max(...curves.flatMap((curve) => curve.map(([speed]) => speed)));
  notes.assume(path, `${highest} rev/min`, 'the highest that held-up oil or pump flow is given at');
  return { rpm: highest };
};

interface LoadKeys {
  readonly braking: number | undefined;
  readonly accelerating: number | undefined;
  readonly left_turn: number | undefined;
  readonly right_turn: number | undefined;
  readonly grade: number | undefined;
}

const loadOf = ({ braking, accelerating, left_turn, right_turn, grade }: LoadKeys): Load => ({
  forward: (accelerating ?? 0) - (braking ?? 0),
  left: (left_turn ?? 0) - (right_turn ?? 0),
  grade: grade ?? 0,
});
