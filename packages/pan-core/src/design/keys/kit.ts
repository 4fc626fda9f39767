import { type Field, quantity, type Range, type Reading, tuple } from '../field/index.js';

/** Keeps slips of a unit out of everything that has no narrower range; not worth saying to people. */
const ANYWHERE: Range = { from: '-10000 mm', to: '10000 mm' };

/** The fields that depend on the file's units, bound to them. */
export const kitFor = (reading: Reading) => {
  const length = (about: string, range?: Range): Field<number> => {
    const field = quantity(reading, 'length', about, range ?? ANYWHERE);
    return range === undefined
      ? { ...field, about: { ...field.about, range: '' } as Field<number>['about'] }
      : field;
  };
  return {
    length,
    /** A length that must be more than nothing. */
    size: (about: string, to = '5000 mm'): Field<number> =>
      quantity(reading, 'length', about, { above: '0 mm', to }),
    volume: (about: string, range: Range = { from: '0 L', to: '100 L' }) =>
      quantity(reading, 'volume', about, range),
    angle: (about: string, range: Range = { from: '-45 deg', to: '45 deg' }) =>
      quantity(reading, 'angle', about, range),
    /** A road's slope: a bare number could be degrees or per cent, so it needs its unit. */
    grade: (about: string) => quantity(reading, 'angle', about, { from: '-45 deg', to: '45 deg' }, true),
    anglePerG: (about: string) => quantity(reading, 'angle per g', about, { from: '-20 deg', to: '20 deg' }),
    acceleration: (about: string) => quantity(reading, 'acceleration', about, { from: '0 g', to: '5 g' }),
    flow: (about: string) => quantity(reading, 'flow', about, { above: '0 L/min', to: '500 L/min' }),
    time: (about: string) => quantity(reading, 'time', about, { above: '0 s', to: '3600 s' }),
    share: (about: string) => quantity(reading, 'share', about, { from: '0 %', below: '100 %' }),
    point2: (about: string) => tuple(about, [length('x'), length('y')]),
    point3: (about: string) => tuple(about, [length('x'), length('y'), length('z')]),
  };
};

export type Kit = ReturnType<typeof kitFor>;
