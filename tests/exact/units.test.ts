import { create, unitDependencies } from 'mathjs';
import {
  commonUnits,
  findUnit,
  fromInside,
  loadUnits,
  readQuantity,
  toInside,
} from 'pan-core/units/index.js';
import table from 'pan-core/units/units.json' with { type: 'json' };
import { describe, expect, it } from 'vitest';

const math = create(unitDependencies === undefined ? {} : { unitDependencies });

const value = (
  raw: unknown,
  kind: Parameters<typeof readQuantity>[1],
  bare: string | null = null,
): number => {
  const read = readQuantity(raw, kind, bare);
  if (!read.ok) throw new Error(`${String(raw)} ${read.reason}`);
  return read.value;
};

const refusal = (raw: unknown, kind: Parameters<typeof readQuantity>[1], bare: string | null = null) => {
  const read = readQuantity(raw, kind, bare);
  if (read.ok) throw new Error(`${String(raw)} was read as ${read.value}`);
  return read;
};

const insideInMathjs: Readonly<Record<string, string>> = {
  length: 'mm',
  volume: 'mm^3',
  angle: 'rad',
  'angle per g': 'rad',
  flow: 'mm^3/s',
  time: 's',
};

describe('the table of units', () => {
  // mathjs 15 carries its own factors; conversion costs it a rounding or two, so equal to 4 parts in 1e16.
  const rows = table.units.filter((row) => row.mathjs !== undefined);
  it.each(rows)('$kind: $names.0 agrees with mathjs', (row) => {
    const unit = row.mathjs as string;
    const factor = row.times / row.over;
    if (row.kind === 'acceleration') {
      // Standard gravity, 3rd CGPM 1901.
      const inMetres = math.unit(1, unit).toNumber('m/s^2') / 9.80665;
      expect(Math.abs(factor / inMetres - 1)).toBeLessThanOrEqual(4.5e-16);
      return;
    }
    const theirs = math.unit(1, unit).toNumber(insideInMathjs[row.kind] as string);
    expect(Math.abs(factor / theirs - 1)).toBeLessThanOrEqual(4.5e-16);
  });

  it('leaves without a mathjs name only what mathjs lacks', () => {
    const without = table.units.filter((row) => row.mathjs === undefined).map((row) => row.names[0]);
    expect([...new Set(without)].sort()).toEqual(
      ['%', 'deg', 'g', 'imp gal', 'imp gal/min', 'imp pt', 'imp qt', 'imp qt/min', 'rad'].sort(),
    );
  });

  it('names no unit twice under one kind', () => {
    const names = commonUnits.map(({ kind, name }) => `${kind}: ${name}`);
    expect(new Set(names).size).toBe(names.length);
  });

  it('turns every unit back to what was written', () => {
    for (const unit of commonUnits) {
      const written = unit.law === 'linear' ? 3.75 : 0.7;
      expect(fromInside(toInside(written, unit), unit)).toBeCloseTo(written, 12);
    }
  });
});

describe('definitions, by hand', () => {
  it.each([
    // US gallon 231 in3 (NIST Handbook 44, appendix C); imperial gallon 4.54609 L (Weights and Measures Act 1985).
    ['1 US qt', 'volume', 946_352.946],
    ['1 imp qt', 'volume', 1_136_522.5],
    ['1 US gal', 'volume', 3_785_411.784],
    ['1 imp gal', 'volume', 4_546_090],
    ['1 US pt', 'volume', 473_176.473],
    ['1 imp pt', 'volume', 568_261.25],
    ['1 in3', 'volume', 16_387.064],
    ['6 US qt', 'volume', 5_678_117.676],
    ['7.2 L', 'volume', 7_200_000],
    ['700 mL', 'volume', 700_000],
    ['700 cm3', 'volume', 700_000],
    ['1 in', 'length', 25.4],
    ['1 ft', 'length', 304.8],
    ['5 1/2 in', 'length', 139.7],
    ['1/2 in', 'length', 12.7],
    ['5.5"', 'length', 139.7],
    ['5.5 "', 'length', 139.7],
    ["2'", 'length', 609.6],
    ['-5 1/2 in', 'length', -139.7],
    ['3/16"', 'length', 4.7625],
    ['2 3/64 in', 'length', 51.990625],
    ['14 cm', 'length', 140],
    ['0.14 m', 'length', 140],
    ['1.4e2 mm', 'length', 140],
    ['.5 mm', 'length', 0.5],
    ['+3 mm', 'length', 3],
    ['180 deg', 'angle', Math.PI],
    ['90°', 'angle', Math.PI / 2],
    ['0.5 rad', 'angle', 0.5],
    ['100 %', 'angle', Math.PI / 4],
    ['0.9 g', 'acceleration', 0.9],
    ['9.80665 m/s2', 'acceleration', 1],
    ['45 deg', 'acceleration', 1],
    ['60 L/min', 'flow', 1_000_000],
    ['1 US gal/min', 'flow', 3_785_411.784 / 60],
    ['4 s', 'time', 4],
    ['2 min', 'time', 120],
    ['3 deg', 'angle per g', Math.PI / 60],
    ['3 deg/g', 'angle per g', Math.PI / 60],
    ['3 deg per g', 'angle per g', Math.PI / 60],
    ['35 %', 'share', 0.35],
  ] as const)('%s', (written, kind, expected) => {
    // At most the last digit of a double apart.
    expect(Math.abs(value(written, kind) / expected - 1)).toBeLessThanOrEqual(2.3e-16);
  });

  it('gives fractions of an inch to the last digit', () => {
    for (const bottom of [2, 4, 8, 16, 32, 64]) {
      for (let top = 1; top < bottom; top++) {
        expect(value(`7 ${top}/${bottom} in`, 'length')).toBe(((7 * bottom + top) * 254) / bottom / 10);
      }
    }
  });
});

describe('a bare number', () => {
  it('takes the declared unit', () => {
    expect(value(140, 'length', 'mm')).toBe(140);
    expect(value(5.5, 'length', 'in')).toBe(139.7);
    expect(value('5 1/2', 'length', 'in')).toBe(139.7);
    expect(value('140', 'length', 'mm')).toBe(140);
    expect(value(0.35, 'share', '1')).toBe(0.35);
  });
  it('is refused where no unit is declared', () => {
    expect(refusal(7, 'volume')).toMatchObject({ code: 'input-unit', reason: 'has no unit' });
  });
});

describe('what is refused, and with which words', () => {
  it.each([
    ['5-1/2 in', 'length', /fraction or a subtraction/, /5 1\/2 in/],
    ['5 - 1/2 in', 'length', /fraction or a subtraction/, /5 1\/2 in/],
    ['5-1/2', 'length', /fraction or a subtraction/, /5 1\/2,/],
    ['1,5 mm', 'length', /comma/, /1\.5 mm/],
    ['1,200 mm', 'length', /comma/, /point/],
    ['5½ in', 'length', /fraction in one character/, /5 1\/2/],
    ['NaN', 'length', /finite/, /figures/],
    ['.nan', 'length', /finite/, /figures/],
    ['Infinity mm', 'length', /finite/, /figures/],
    ['1e999 mm', 'length', /finite/, /figures/],
    ['1/0 in', 'length', /finite/, /figures/],
    ['−3 deg', 'angle', /typographic minus/, /hyphen/],
    ['5 ft 6 in', 'length', /two units/, /one unit/],
    ['2+3 mm', 'length', /not a number with a unit/, /140 mm/],
    ['2*3 mm', 'length', /not a number with a unit/, /140 mm/],
    ['sqrt(4) mm', 'length', /not a number with a unit/, /140 mm/],
    ['0x10 mm', 'length', /unit x10/, /mm/],
    ['1.2.3 mm', 'length', /not a number with a unit/, /140 mm/],
    ['1/2/3 in', 'length', /not a number with a unit/, /140 mm/],
    ['mm', 'length', /not a number with a unit/, /140 mm/],
    ['', 'length', /empty/, /140 mm/],
    ['6 qt', 'volume', /different sizes/, /US qt or imp qt/],
    ['6 quarts', 'volume', /different sizes/, /US qt or imp qt/],
    ['2 gal', 'volume', /different sizes/, /US gal or imp gal/],
    ['3 pt', 'volume', /different sizes/, /US pt or imp pt/],
    ['12 gal/min', 'flow', /different sizes/, /US gal\/min or imp gal\/min/],
    ['3 MM', 'length', /MM, which is not known/, /mm/],
    ['3 Mm', 'length', /Mm, which is not known/, /mm/],
    ['3 L', 'length', /measures a volume/, /a length/],
    ['3 mm', 'volume', /measures a length/, /a volume/],
    ['3 milimetres', 'length', /not known/, /millimetres/],
  ] as const)('%s', (written, kind, reason, advice) => {
    const refused = refusal(written, kind);
    expect(refused.reason).toMatch(reason);
    expect(refused.advice).toMatch(advice);
  });

  it('anything that is neither a number nor text', () => {
    for (const raw of [null, undefined, true, [], {}, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(readQuantity(raw, 'length', 'mm').ok).toBe(false);
    }
  });

  it('a long text at once, without reading it', () => {
    expect(refusal(`${'1'.repeat(1_000_000)} mm`, 'length').reason).toMatch(/1000003 characters/);
  });
});

describe('units beyond the table', () => {
  it('are looked up in mathjs', async () => {
    const units = await loadUnits(['yd', 'cuft', 'arcmin', 'hour', 'dm', 'cuft/hour']);
    // Definitions: 1 yd = 914.4 mm, 1 ft3 = 28316846.592 mm3 (international foot).
    expect(findUnit(units, 'length', 'yd')?.times).toBeCloseTo(914.4, 10);
    expect(findUnit(units, 'volume', 'cuft')?.times).toBeCloseTo(28_316_846.592, 6);
    expect(findUnit(units, 'angle', 'arcmin')?.times).toBeCloseTo(Math.PI / 180 / 60, 15);
    expect(findUnit(units, 'time', 'hour')?.times).toBeCloseTo(3600, 9);
    expect(findUnit(units, 'length', 'dm')?.times).toBeCloseTo(100, 12);
    expect(findUnit(units, 'flow', 'cuft/hour')?.times).toBeCloseTo(28_316_846.592 / 3600, 8);
    const read = readQuantity('2 yd', 'length', null, units);
    expect(read.ok && read.value).toBeCloseTo(1828.8, 10);
  });
  it('are named as missing when they might exist, and never when they are a slip of case', () => {
    expect(refusal('2 yd', 'length').missing).toBe('yd');
    expect(refusal('2 Mm', 'length').missing).toBeUndefined();
    expect(refusal('2 qt', 'volume').missing).toBeUndefined();
  });
  it('are never made of text that could be evaluated', async () => {
    expect(
      await loadUnits([
        'mm; import(x)',
        'f(x)',
        'mm*3',
        'mm*mm/mm',
        'm^3/mm^2',
        '',
        'kg',
        'cos',
        'a'.repeat(1e6),
      ]),
    ).toEqual([]);
  });
});
