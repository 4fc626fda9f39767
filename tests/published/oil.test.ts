import { hotGrades, isoSpan, oilDensity, winterGrades } from 'pan-core/oil/index.js';
import { describe, expect, test } from 'vitest';
import { expectPublished, row, rowsUnder, title } from './rows.js';

const hot = (id: string) => {
  const found = hotGrades.find((h) => h.grade === row(id).inputs.grade);
  if (found === undefined) throw new Error(`no grade for ${id}`);
  return found;
};

const winter = (id: string) => {
  const found = winterGrades.find((w) => w.grade === row(id).inputs.grade);
  if (found === undefined) throw new Error(`no grade for ${id}`);
  return found;
};

describe('SAE J300', () => {
  test.each(rowsUnder('oil.kv100').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const { least100, below100 } = hot(id);
    expectPublished(id, id.endsWith('.min') ? least100 : below100);
  });
  test.each(rowsUnder('oil.hths').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const { hths, hthsLight } = hot(id);
    expectPublished(id, id.endsWith('.light') ? (hthsLight ?? Number.NaN) : hths);
  });
  test.each(rowsUnder('oil.cranking').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    expectPublished(id, winter(id).cranking);
    expect(winter(id).crankingAt).toBe(row(id).inputs.temperature_C);
  });
  test.each(rowsUnder('oil.pumping').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    expectPublished(id, winter(id).pumping);
    expect(winter(id).pumpingAt).toBe(row(id).inputs.temperature_C);
  });
});

describe('ISO 3448', () => {
  test.each(rowsUnder('oil.iso-vg').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const [least, most] = isoSpan(Number(row(id).inputs.grade));
    expectPublished(id, id.endsWith('.min') ? least : most);
  });
});

describe('density', () => {
  test.each(rowsUnder('oil.density').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const { density_60F_kg_m3, temperature_C } = row(id).inputs;
    expectPublished(id, oilDensity(Number(density_60F_kg_m3), Number(temperature_C)));
  });
});
