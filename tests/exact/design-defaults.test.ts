import { findMaterial, materials, smallestBendRadius } from 'pan-core';
import { describe, expect, it } from 'vitest';
import { changed, read, SMALLEST } from '../design-text.js';
import { expectWithin } from '../numbers.js';

const withSheet = (sheet: string): string => changed(SMALLEST, 'pan:\n', `pan:\n  sheet: ${sheet}\n`);

describe('what is taken when nothing is said', () => {
  it('is common practice, listed with its unit and its reason', async () => {
    const { design, assumed } = await read(SMALLEST);
    const listed = Object.fromEntries(assumed.map(({ path, value }) => [path.join('.'), value]));
    // Common practice, no source, as in the project's list of usual values.
    expect(listed).toMatchObject({
      'engine.rail.land': '25 mm',
      'engine.crankcase_displaced': '35 %',
      'oil.filter': '0.5 L',
      'oil.held_up': '1.2 L',
      'oil.galleries': '0.5 L',
      'oil.grade': '5W-30',
      'pan.sheet.material': 'aluminium 5052-H32',
      'pan.sheet.thickness': '3 mm',
      'pan.sheet.bend_radius': '5 mm',
      'pan.flange.thickness': '10 mm',
      'pan.flange.fit': 'medium',
      'pan.flange.gasket': 'sealant',
      'pickup.gap': '8 mm',
      'pickup.mouth': '60 mm',
      'pickup.bore': '22 mm',
      'pickup.wall': '1.5 mm',
      'chassis.engine_moves.rock': '2 deg',
      'chassis.body.roll_per_g': '3 deg',
      'chassis.body.dive_per_g': '1.5 deg',
      manoeuvres: 'street',
    });
    expect(assumed.every(({ why }) => why.length > 10)).toBe(true);
    expect(design.engine.crankcaseDisplaced).toBe(0.35);
    expect(design.oil.heldUp).toBe(1.2e6);
    expect(design.pickup.gap).toBe(8);
    expectWithin(design.chassis.moves.rock, (2 * Math.PI) / 180, 1e-17);
    // From memory: street 1.0 g braking, 0.8 either way, 0.4 accelerating, 4 s.
    expect(
      design.manoeuvres.map(({ forward, left, seconds }) => [forward, left, seconds]).slice(0, 4),
    ).toEqual([
      [-1, 0, 4],
      [0, 0.8, 4],
      [0, -0.8, 4],
      [0.4, 0, 4],
    ]);
  });

  it('says nothing of what is simply not there', async () => {
    const { design, assumed } = await read(SMALLEST);
    expect(design.drain).toBeNull();
    expect(design.dipstick).toBeNull();
    expect(design.chassis.ground).toBeNull();
    expect(design.engine.topAboveRail).toBeNull();
    expect(
      assumed.filter(({ path }) => ['drain', 'dipstick', 'bungs', 'baffles'].includes(String(path[0]))),
    ).toEqual([]);
  });

  it('is thinner in steel', async () => {
    const { sheet, flange } = (await read(withSheet('{material: mild steel}'))).design.pan;
    expect([sheet.thickness, flange.thickness]).toEqual([1.5, 8]);
    // Inch table, 1020 at 0.063 in: 0.094 in = 2.39 mm, to the next half millimetre.
    expect(sheet.bendRadius).toBe(2.5);
  });
});

describe('the smallest bend radius', () => {
  // Inch table of smallest inside radii (seen in a stored copy); the larger where its two tables disagree.
  it.each([
    ['aluminium 5052-H32', 0.125, 0.188],
    ['aluminium 5052-H32', 0.1, 0.188],
    ['aluminium 6061-T6', 0.09, 0.312],
    ['aluminium 3003-H14', 0.063, 0.063],
    ['mild steel', 0.04, 0.094],
    ['cold-rolled steel', 0.125, 0.188],
    ['stainless 304', 0.063, 0.125],
    // Past the last row in proportion: 0.188 / 0.09 of the thickness.
    ['stainless 304', 0.18, 0.376],
  ])('%s, %d in thick: %d in', (key, thickness, radius) => {
    const material = findMaterial(key);
    if (material === null) throw new Error(`no ${key}`);
    expectWithin(smallestBendRadius(material, thickness * 25.4), radius * 25.4, 1e-12);
  });

  it('is rounded up and says so when it is carried past the table', async () => {
    const { design, assumed } = await read(withSheet('{material: stainless 304, thickness: 4}'));
    // 0.188 / 0.09 × 4 = 8.36 mm
    expect(design.pan.sheet.bendRadius).toBe(8.5);
    expect(assumed.find(({ path }) => path.at(-1) === 'bend_radius')?.why).toMatch(/past its thickest row/);
  });
});

describe('materials', () => {
  it.each([
    // g/cm³: carbon steel and 3003 seen in a stored table; 5052, 6061 and 304 from memory.
    ['aluminium 5052-H32', 2.68],
    ['aluminium 6061-T6', 2.7],
    ['aluminium 3003-H14', 2.73],
    ['mild steel', 7.85],
    ['cold-rolled steel', 7.85],
    ['stainless 304', 8],
  ])('%s: %d g/cm³', (key, density) => {
    expectWithin(findMaterial(key)?.density, density * 1e-6, 1e-21);
  });
  it('are found by name or not at all', () => {
    expect(findMaterial('cheese')).toBeNull();
    expect(new Set(materials.map(({ key }) => key)).size).toBe(materials.length);
  });
});
