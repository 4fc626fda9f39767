import { loadUnits, type Problem, type QuantityKind, readQuantity } from 'pan-core';

/** Where an option's value goes: the number in inside units, or what is wrong with it. */
export type OptionValue =
  | { readonly value: number; readonly problem?: undefined }
  | { readonly value?: undefined; readonly problem: Problem };

/**
 * Reads an option such as `--braking "35 deg"` or `--in-pan "5 US qt"`; null where it was not given.
 *
 * @param bare unit of a number without one; null when a unit must be written
 */
export const optionQuantity = async (
  options: Readonly<Record<string, string | true | undefined>>,
  name: string,
  kind: QuantityKind,
  bare: string | null,
): Promise<OptionValue | null> => {
  const typed = options[name];
  if (typeof typed !== 'string') return null;
  let read = readQuantity(typed, kind, bare);
  // A unit outside the common table is worth loading the large one for, and nothing else is.
  if (!read.ok && read.missing !== undefined)
    read = readQuantity(typed, kind, bare, await loadUnits([read.missing]));
  if (read.ok) return { value: read.value };
  return {
    problem: {
      code: 'input-option',
      path: [],
      message: `--${name} ${typed.length > 40 ? 'VALUE' : typed} ${read.reason}.`,
      expected: read.expected,
      advice: read.advice,
    },
  };
};

/** Least and most an option may be, in a unit people read; `size` inside units make one of it. */
export interface Span {
  readonly most: number;
  readonly unit: string;
  readonly size: number;
  readonly advice: string;
}

/** Refuses a value that is not at least 0 and at most the span's most. */
export const within = (got: OptionValue | null, name: string, span: Span): OptionValue | null => {
  if (got?.value === undefined) return got;
  const { most, unit, size, advice } = span;
  const value = got.value / size;
  if (value >= 0 && value <= most) return got;
  return {
    problem: {
      code: 'input-option',
      path: [],
      message: `--${name} is ${Number(value.toPrecision(6))} ${unit}; it must lie between 0 and ${most} ${unit}.`,
      value,
      limit: value < 0 ? 0 : most,
      unit,
      advice,
    },
  };
};
