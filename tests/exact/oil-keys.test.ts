import {
  densityOf,
  kinematicViscosity,
  oilProperties,
  viscosityAt40,
  viscosityAt100,
  viscosityIndex,
} from 'pan-core';
import { describe, expect, it } from 'vitest';
import { changed, exampleText, keyOf, problemsIn, read } from '../design-text.js';
import { expectWithin } from '../numbers.js';

const demo = exampleText('demo');
const withOil = (keys: string): string => changed(demo, 'grade: 5W-30', `grade: 5W-30, ${keys}`);
const oilFrom = async (text: string) => oilProperties((await read(text)).design.oil);
const keysOf = (assumed: readonly { readonly path: readonly (string | number)[] }[]): string[] =>
  assumed.map(({ path }) => path.join('.'));

describe('an oil from its data sheet', () => {
  it('two viscosities: the line runs through both and nothing but the density is assumed', async () => {
    const oil = await oilFrom(withOil('kv40: 61, kv100: 10.4'));
    expectWithin(kinematicViscosity(oil, 40), 61, 1e-9, 'at 40 °C');
    expectWithin(kinematicViscosity(oil, 100), 10.4, 1e-10, 'at 100 °C');
    expect(keysOf(oil.assumed)).toEqual(['oil.density']);
  });

  it('one viscosity and the index give the other', async () => {
    const hot = await oilFrom(withOil('kv100: 10.4, vi: 160, density: 855'));
    const at40 = kinematicViscosity(hot, 40);
    expectWithin(at40, viscosityAt40(10.4, 160), 1e-9, 'at 40 °C');
    expectWithin(viscosityIndex(at40, 10.4), 160, 1e-9, 'index');
    const cold = await oilFrom(withOil('kv40: 61, vi: 160, density: 855'));
    expectWithin(kinematicViscosity(cold, 100), viscosityAt100(61, 160) ?? Number.NaN, 1e-9, 'at 100 °C');
    expect(keysOf(hot.assumed)).toEqual([]);
  });

  it('one viscosity alone takes a usual index and says so', async () => {
    const oil = await oilFrom(withOil('kv100: 10.4, density: 855'));
    expect(keysOf(oil.assumed)).toEqual(['oil.vi']);
  });

  it('weighs what the sheet says at 15 °C, less when hot', async () => {
    const oil = await oilFrom(withOil('density: 855'));
    expectWithin(densityOf(oil, 15), 855, 1e-9, 'at 15 °C');
    expect(densityOf(oil, 100)).toBeLessThan(810);
  });
});

describe('an oil from its grade', () => {
  it('lies in the middle of its span hot, at its W grade’s cranking limit cold, and says so', async () => {
    const oil = await oilFrom(demo);
    expectWithin(kinematicViscosity(oil, 100), (9.3 + 12.5) / 2, 1e-9, 'at 100 °C');
    // 6600 mPa·s is ν·ρ at −30 °C, in mm²/s times g/cm³.
    expectWithin((kinematicViscosity(oil, -30) * densityOf(oil, -30)) / 1000, 6600, 1e-6, 'at −30 °C');
    expect(oil.coldest).toBe(-30);
    expect(keysOf(oil.assumed)).toEqual(['oil.density', 'oil.kv100']);
  });

  it.each([
    ['SAE 40', 14.4, 0],
    ['20w50', 19.1, -15],
    ['10W 40', 14.4, -25],
  ])('%s', async (grade, hot, coldest) => {
    const oil = await oilFrom(changed(demo, 'grade: 5W-30', `grade: ${grade}`));
    expectWithin(kinematicViscosity(oil, 100), hot, 1e-9, 'at 100 °C');
    expect(oil.coldest).toBe(coldest);
  });

  it('a grade nobody knows is taken as another, and that is said', async () => {
    const oil = await oilFrom(changed(demo, 'grade: 5W-30', 'grade: 7W-31'));
    expect(oil.assumed[0]?.value).toBe('5W-30');
    expect(oil.assumed[0]?.why).toContain('7W-31');
  });
});

describe('slips in the oil’s keys', () => {
  it.each([
    ['kv40: 9, kv100: 10.4', 'oil.kv40'],
    ['kv40: 3', 'oil.kv40'],
    ['kv100: 400', 'oil.kv100'],
    ['density: 0.855', 'oil.density'],
    ['vi: 900', 'oil.vi'],
  ])('%s is refused', async (keys, key) => {
    const problems = await problemsIn(withOil(keys));
    expect(problems.map(keyOf)).toEqual([key]);
    expect(problems[0]?.code).toBe('input-range');
  });
});
