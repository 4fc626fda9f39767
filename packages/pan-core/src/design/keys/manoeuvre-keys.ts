import { assumedText } from '../default.js';
import { checked, choice, count, either, list, optional, type Report, section } from '../field/index.js';
import { presetNames } from '../manoeuvre-preset.js';
import { nameField } from './items.js';
import type { Kit } from './kit.js';

/** Engine speed, as a bare number of revolutions a minute. */
export const speedField = count('engine speed, rev/min', 100, 20000);

const loadKeys = (k: Kit) => ({
  braking: optional(k.acceleration('braking')),
  accelerating: optional(k.acceleration('accelerating')),
  left_turn: optional(k.acceleration('turning left')),
  right_turn: optional(k.acceleration('turning right')),
  grade: optional(k.grade('slope of the road, uphill positive, with its unit: 10 % or 6 deg')),
});

interface LoadKeys {
  readonly braking?: number | undefined;
  readonly accelerating?: number | undefined;
  readonly left_turn?: number | undefined;
  readonly right_turn?: number | undefined;
  readonly grade?: number | undefined;
}

const opposed = (load: LoadKeys, report: Report): void => {
  for (const [a, b] of [
    ['braking', 'accelerating'],
    ['left_turn', 'right_turn'],
  ] as const) {
    if (load[a] === undefined || load[b] === undefined) continue;
    report({ code: 'input-key', says: `cannot stand beside ${a}`, expected: `${a} or ${b}` }, [b]);
  }
};

const caseField = (k: Kit) =>
  checked(
    section('one case', {
      name: nameField('hard stop'),
      ...loadKeys(k),
      for: optional(k.time('how long it lasts'), assumedText('manoeuvre time')),
      rpm: optional(speedField),
      via: optional(
        list('loads passed through on the way, in order', checked(section('a load', loadKeys(k)), opposed), {
          most: 20,
        }),
      ),
    }),
    (load, report) => {
      opposed(load, report);
      const { braking, accelerating, left_turn, right_turn, grade } = load;
      if ([braking, accelerating, left_turn, right_turn, grade].some((value) => value !== undefined)) return;
      report({
        code: 'input-missing',
        says: 'says no load',
        expected: 'at least one of: braking, accelerating, left_turn, right_turn, grade',
        found: 'none of them',
      });
    },
  );

const presetField = section('a set of usual cases', { preset: choice('kind of driving', presetNames) });

const hasPreset = (raw: unknown): boolean => typeof raw === 'object' && raw !== null && 'preset' in raw;

export const manoeuvresField = (k: Kit) =>
  list(
    'what the car does; street driving when left out',
    either('one case, or a set of usual cases', [
      { when: hasPreset, field: presetField },
      { when: () => true, field: caseField(k) },
    ]),
    { fewest: 1, most: 60 },
  );
