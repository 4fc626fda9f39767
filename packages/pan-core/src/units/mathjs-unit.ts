import { create, unitDependencies } from 'mathjs';
import type { QuantityKind, Unit } from './unit.js';

const INSIDE: readonly (readonly [QuantityKind, string])[] = [
  ['length', 'mm'],
  ['volume', 'mm^3'],
  ['angle', 'rad'],
  ['angle per g', 'rad'],
  ['flow', 'mm^3/s'],
  ['time', 's'],
];

// A bare name or one name per another: mathjs's own parser for units never sees anything else.
const NAME = /^[A-Za-z]{1,20}(\/[A-Za-z]{1,20})?$/;

/** The unit under every kind it can measure; empty when mathjs does not know the name. */
export const lookUpUnit = (name: string): readonly Unit[] => {
  if (!NAME.test(name) || unitDependencies === undefined) return [];
  const math = create({ unitDependencies });
  try {
    const one = math.unit(1, name);
    return INSIDE.filter(([, inside]) => one.equalBase(math.unit(1, inside))).map(([kind, inside]) =>
      Object.freeze({ kind, name, times: one.toNumber(inside), over: 1, law: 'linear' as const }),
    );
  } catch {
    return [];
  }
};
