import {
  AIR,
  cautionsFor,
  filletMass,
  filletThroat,
  heatInput,
  PSI,
  pressureForce,
  type Seam,
  type SeamHeat,
  seamHeat,
  storedEnergy,
} from 'pan-core/weld/index.js';
import { describe, expect, test } from 'vitest';
import { expectPublished, expectSays, row, rowsUnder, title } from './rows.js';

const input = (id: string, name: string): number => {
  const value = row(id).inputs[name];
  if (typeof value !== 'number') throw new Error(`${id} has no input ${name}`);
  return value;
};

describe('fillets', () => {
  test(title('weld.throat'), () => expectPublished('weld.throat', filletThroat(1)));
  test.each(rowsUnder('weld.fillet-metal').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const density = input(id, 'density_g_cm3') * 1e-6;
    expectPublished(id, filletMass(input(id, 'leg_mm'), 1000, density));
  });
});

describe('heat', () => {
  const id = 'weld.heat-input';
  test(title('weld.heat-input'), () => {
    const at = (name: string): number => input(id, name);
    expectPublished(id, heatInput(at('volt'), at('ampere'), at('speed_mm_min'), at('efficiency')));
  });
});

describe('efficiency of the arc, as the heat of a seam uses it', () => {
  const seam: Seam = {
    number: 1,
    name: 'corner',
    between: ['belly', 'side left'],
    joint: 'open corner',
    side: 'outside',
    run: 'continuous',
    length: 100,
    lines: [],
    size: 3,
    step: 'shell',
    closedBy: null,
    prep: { gap: 0, fit: '', TIG: '', MIG: '', source: '' },
  };
  test.each([
    ['weld.efficiency.mig', 'MIG', 'mild steel'],
    ['weld.efficiency.tig', 'TIG', 'aluminium 5052-H32'],
  ])('%s', (id, process, material) => {
    const heat = seamHeat(seam, material, 3).find((one) => one.process === process);
    const { perMm, volts, amps, travel } = heat as SeamHeat;
    expectPublished(id, perMm / ((60 * volts * amps) / (1000 * travel)));
  });
});

describe('leak test', () => {
  test(title('leak.energy.form'), () => {
    // The energy formula solved for its exponent, at 5 psi over one atmosphere in 7 L.
    const [gauge, volume] = [5 * PSI, 7e6];
    const share = storedEnergy(gauge, volume) / (2.5 * (AIR + gauge) * volume * 1e-9);
    expectPublished('leak.energy.form', Math.log(1 - share) / Math.log(AIR / (AIR + gauge)));
  });
  test.each(
    ['leak.energy.2-psi', 'leak.energy.3-psi', 'leak.energy.5-psi', 'leak.energy.15-psi'].map((id) => [
      title(id),
      id,
    ]),
  )('%s', (_, id) => {
    expectPublished(id, storedEnergy(input(id, 'gauge_psi') * PSI, input(id, 'volume_L') * 1e6));
  });
  test(title('leak.force'), () => {
    const [a, b] = row('leak.force').inputs.panel_m as [number, number];
    expectPublished('leak.force', pressureForce(input('leak.force', 'gauge_psi') * PSI, a * b * 1e6));
  });
});

describe('cautions say the published limit and who set it', () => {
  const find = (material: string, id: string): { text: string; source: string } => {
    const found = cautionsFor(material, 'weld').find((c) => c.id === id);
    if (found === undefined) throw new Error(`${material} has no caution ${id}`);
    return found;
  };
  test.each([
    ['stainless 304', 'hexavalent-chromium', 'weld.caution.chromium'],
    ['mild steel', 'zinc', 'weld.caution.zinc'],
  ])('%s: %s', (material, id, published) => {
    const { text } = find(material, id);
    expect(text).toContain(`${row(published).value} ${row(published).unit}`);
    expectSays(published, text);
  });
  test.each([
    ['fume', 'weld.caution.general'],
    ['chlorinated-cleaner', 'weld.caution.solvent'],
    ['used-metal', 'weld.caution.container.law'],
    ['used-metal', 'weld.caution.container.practice'],
  ])('%s', (id, published) => {
    expectSays(published, find('aluminium 5052-H32', id).source);
  });
  test('6061-T6 falls from 42 to about 24 ksi', () => {
    const { text } = find('aluminium 6061-T6', 'softened-6061');
    expect(text).toContain(`${row('weld.strength.6061-t6-welded').value} ksi`);
    expectSays('weld.strength.6061-t6-welded', text);
    expectSays('weld.strength.6061-t6', text);
    expect(cautionsFor('aluminium 5052-H32', 'weld').some((c) => c.id === 'softened-6061')).toBe(false);
  });
  test('aluminium is not warned of chromium or zinc', () => {
    const ids = cautionsFor('aluminium 5052-H32', 'weld').map((c) => c.id);
    expect(ids).not.toContain('hexavalent-chromium');
    expect(ids).not.toContain('zinc');
  });
});
