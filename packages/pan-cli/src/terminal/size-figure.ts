import type { Screen } from '../commands/command.js';
import { quantity } from './quantity.js';

/** A figure of a sizing to the tenth of a mm that its steps have. */
export const fine = (value: number, unit: string, { units }: Pick<Screen, 'units'>): string => {
  if (unit === 'mm' && units === 'mm') return `${Number(value.toFixed(1))} mm`;
  if (unit === 'times' || unit === '') return `${value.toFixed(3)} ${unit}`.trim();
  return quantity(value, unit, units);
};
