import { assumedText } from '../default.js';
import {
  checked,
  either,
  type Fault,
  type Field,
  isList,
  list,
  optional,
  orUnknown,
  plainNumber,
  section,
  text,
  tuple,
} from '../field/index.js';
import type { Kit } from './kit.js';
import { speedField } from './manoeuvre-keys.js';

/** One value, or [[rev/min, value], …] with the speed rising. */
const bySpeed = (about: string, value: Field<number>) =>
  either(about, [
    {
      when: isList,
      field: checked(
        list(
          `${about}, by engine speed: [[rev/min, value], …]`,
          tuple('engine speed and value', [speedField, value]),
          { fewest: 2, most: 40 },
        ),
        (rows, report) => {
          rows.forEach(([rpm], i) => {
            const before = rows[i - 1]?.[0];
            if (before === undefined || rpm > before) return;
            const says = `is at ${rpm} rev/min, which is not above the ${before} rev/min before it`;
            report({ code: 'input-range', says, value: rpm, limit: before, unit: 'rev/min' }, [i]);
          });
        },
      ),
    },
    { when: () => true, field: value },
  ]);

/** Spans that a data sheet of an engine oil stays within; outside them a unit was mistaken. */
const SPANS = {
  kv40: [5, 2000, 'mm²/s'],
  kv100: [2, 100, 'mm²/s'],
  vi: [0, 400, ''],
  density: [700, 1100, 'kg/m³'],
} as const;

type SheetKey = keyof typeof SPANS;

export const oilField = (k: Kit) =>
  checked(
    section('the oil', {
      fill: k.volume('oil poured in, filter included', { above: '0 L', to: '100 L' }),
      filter: optional(k.volume('oil in filter and cooler'), assumedText('oil filter')),
      held_up: optional(
        bySpeed(
          'oil in the engine while it runs, galleries included',
          k.volume('oil in the engine while it runs, galleries included'),
        ),
        assumedText('oil held up'),
      ),
      galleries: optional(
        k.volume('oil left in the galleries after stopping'),
        assumedText('oil in galleries'),
      ),
      grade: optional(text('grade', 40, '5W-30'), assumedText('oil grade')),
      kv40: optional(plainNumber('viscosity at 40 °C from the oil’s data sheet, mm²/s')),
      kv100: optional(plainNumber('viscosity at 100 °C from the oil’s data sheet, mm²/s')),
      vi: optional(plainNumber('viscosity index from the oil’s data sheet')),
      density: optional(plainNumber('density at 15 °C from the oil’s data sheet, kg/m³')),
      pump: orUnknown(bySpeed('flow of the pump', k.flow('flow of the pump at the speed of the cases'))),
      pump_cranking: optional(k.flow('flow of the pump at cranking speed'), assumedText('pump cranking')),
    }),
    (keys, report) => {
      for (const key of Object.keys(SPANS) as SheetKey[]) {
        const [fault, value] = [outside(key, keys[key]), keys[key]];
        if (fault !== null && value !== undefined) report(fault, [key]);
      }
      const { kv40, kv100 } = keys;
      if (kv40 === undefined || kv100 === undefined || kv40 > kv100) return;
      report(
        {
          code: 'input-range',
          says: `is ${kv40}, no more than at 100 °C; oil thins as it warms`,
          value: kv40,
          limit: kv100,
          unit: 'mm²/s',
        },
        ['kv40'],
      );
    },
  );

const outside = (key: SheetKey, value: number | undefined): Fault | null => {
  const [from, to, unit] = SPANS[key];
  if (value === undefined || (value >= from && value <= to)) return null;
  return {
    code: 'input-range',
    says: `is ${value}; it must be from ${from} to ${to}${unit === '' ? '' : ` ${unit}`}`,
    value,
    limit: value < from ? from : to,
    unit,
  };
};
