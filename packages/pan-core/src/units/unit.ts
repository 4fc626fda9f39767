import table from './units.json' with { type: 'json' };

/** What a quantity measures; each is held in one inside unit, named in the table's `kinds`. */
export type QuantityKind =
  | 'length'
  | 'volume'
  | 'angle'
  | 'acceleration'
  | 'flow'
  | 'time'
  | 'angle per g'
  | 'share';

/** A unit name for one kind: inside value = law(written value × times / over). */
export interface Unit {
  readonly kind: QuantityKind;
  readonly name: string;
  /** Kept as a fraction of whole numbers, so 5 1/2 in becomes 139.7 mm to the last digit. */
  readonly times: number;
  readonly over: number;
  readonly law: 'linear' | 'tan' | 'atan';
}

/** What to call a kind of quantity, with an example. */
export interface KindWords {
  readonly inside: string;
  readonly say: string;
  readonly example: string;
}

const lawOf = (law: string | undefined): Unit['law'] => (law === 'tan' || law === 'atan' ? law : 'linear');

/** Units read without loading anything; factors are checked against mathjs in the tests. */
export const commonUnits: readonly Unit[] = Object.freeze(
  table.units.flatMap((row) =>
    row.names.map((name) =>
      Object.freeze({
        kind: row.kind as QuantityKind,
        name,
        times: row.times,
        over: row.over,
        law: lawOf(row.law),
      }),
    ),
  ),
);

/** The words for a kind of quantity. */
export const kindWords = (kind: QuantityKind): KindWords => table.kinds[kind];

/** What to write instead of a name that means different sizes in different places; null when it is plain. */
export const offeredFor = (name: string): readonly string[] | null =>
  table.ambiguous.find((row) => row.names.includes(name))?.offer ?? null;

/** The first unit of that name and kind, or undefined. */
export const findUnit = (units: readonly Unit[], kind: QuantityKind, name: string): Unit | undefined =>
  units.find((unit) => unit.kind === kind && unit.name === name);

/** Value in the kind's inside unit. */
export const toInside = (value: number, unit: Unit): number => {
  const scaled = (value * unit.times) / unit.over;
  if (unit.law === 'tan') return Math.tan(scaled);
  return unit.law === 'atan' ? Math.atan(scaled) : scaled;
};

/** Value in the unit, from the kind's inside unit. */
export const fromInside = (inside: number, unit: Unit): number => {
  const scaled = unit.law === 'tan' ? Math.atan(inside) : unit.law === 'atan' ? Math.tan(inside) : inside;
  return (scaled * unit.over) / unit.times;
};
