import { defaultNamed } from '../default.js';
import type { Load, Manoeuvre } from '../design.js';
import type { DesignKeys } from '../keys/design-keys.js';
import { type PresetName, presetManoeuvres } from '../manoeuvre-preset.js';
import type { Notes } from './notes.js';

type Entry = NonNullable<DesignKeys['manoeuvres']>[number];
type Case = Exclude<Entry, { readonly preset: PresetName }>;

export const resolveManoeuvres = (
  entries: readonly Entry[] | undefined,
  notes: Notes,
): readonly Manoeuvre[] => {
  if (entries !== undefined) {
    return entries.flatMap((entry, i) =>
      'preset' in entry ? presetManoeuvres(entry.preset) : [caseOf(entry, i, notes)],
    );
  }
  const { value, why } = defaultNamed('manoeuvres');
  notes.assume(['manoeuvres'], value, why);
  return presetManoeuvres(value as PresetName);
};

const caseOf = (keys: Case, index: number, notes: Notes): Manoeuvre => ({
  name: keys.name,
  ...loadOf(keys),
  seconds: notes.take(keys.for, ['manoeuvres', index, 'for'], 'time', 'manoeuvre time'),
  via: (keys.via ?? []).map(loadOf),
});

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
