import {
  viscosityAt,
  viscosityAt40,
  viscosityAt100,
  viscosityIndex,
  viscosityLine,
} from 'pan-core/oil/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { expectPublished, row, rowsUnder, title } from './rows.js';

describe('ASTM D341', () => {
  const { nu_40_mm2_s, nu_100_mm2_s, kelvin_offset } = row('oil.d341.a').inputs;
  const line = viscosityLine(
    { celsius: 40, viscosity: Number(nu_40_mm2_s) },
    { celsius: 100, viscosity: Number(nu_100_mm2_s) },
    Number(kelvin_offset),
  );
  test(title('oil.d341.a'), () => expectPublished('oil.d341.a', line.a));
  test(title('oil.d341.b'), () => expectPublished('oil.d341.b', line.b));
  test(title('oil.d341.at-80'), () => expectPublished('oil.d341.at-80', viscosityAt(line, 80)));
  test('the line runs through both of its points', () => {
    expectWithin(viscosityAt(line, 40), 32, 1e-9, 'viscosity at 40 °C');
    expectWithin(viscosityAt(line, 100), 5.4, 1e-9, 'viscosity at 100 °C');
  });
});

describe('ASTM D2270', () => {
  test.each(rowsUnder('oil.viscosity-index').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const { nu_40_mm2_s, nu_100_mm2_s } = row(id).inputs;
    expectPublished(id, viscosityIndex(Number(nu_40_mm2_s), Number(nu_100_mm2_s)));
  });
  test.each(rowsUnder('oil.index-table').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const at100 = Number(row(id).inputs.nu_100_mm2_s);
    expectPublished(id, viscosityAt40(at100, Number(row(id).inputs.index)));
  });
  test('index and viscosity at either temperature give each other back', () => {
    for (const at100 of [2.4, 4.1, 4.7, 5.8, 6.7, 7.3, 8.9, 10.9, 14.4, 16.5, 20.6, 24.9])
      for (const index of [40, 95, 100, 130, 190]) {
        const at40 = viscosityAt40(at100, index);
        expectWithin(viscosityIndex(at40, at100), index, 1e-9, `index at ${at100} mm²/s`);
        expectWithin(viscosityAt100(at40, index), at100, 2e-3 * at100, 'viscosity at 100 °C');
      }
  });
  test('below 2 mm²/s at 100 °C there is no index', () => {
    expect(viscosityIndex(5, 1.9)).toBeNaN();
  });
});
