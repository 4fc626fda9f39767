import {
  bendRatio,
  colebrook,
  criticalSubmergence,
  type Entrance,
  entranceLoss,
  frictionFactor,
  haaland,
  mouthFroude,
  mouthSpeed,
  tubeLoss,
} from 'pan-core/oil/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { expectPublished, row, rowsUnder, title } from './rows.js';

const input = (id: string, name: string): number => {
  const value = row(id).inputs[name];
  if (typeof value !== 'number') throw new Error(`${id} has no input ${name}`);
  return value;
};

const LITRE_A_MINUTE = 1e6 / 60;

describe('critical submergence', () => {
  const at = (id: string): readonly [number, number] => [
    input(id, 'diameter_mm'),
    input(id, 'flow_L_min') * LITRE_A_MINUTE,
  ];
  test(title('pickup.critical.form'), () => {
    // The flow that makes Fr = V/√(gD) exactly 1 at a mouth of 20 mm.
    const flow = ((Math.PI * 20 ** 2) / 4) * Math.sqrt(9806.65 * 20);
    expectPublished('pickup.critical.form', criticalSubmergence(20, flow) / 20);
  });
  test(title('pickup.critical.velocity'), () => {
    expectPublished('pickup.critical.velocity', mouthSpeed(...at('pickup.critical.velocity')) / 1000);
  });
  test(title('pickup.critical.froude'), () => {
    expectPublished('pickup.critical.froude', mouthFroude(...at('pickup.critical.froude')));
  });
  test(title('pickup.critical.submergence'), () => {
    expectPublished('pickup.critical.submergence', criticalSubmergence(...at('pickup.critical.submergence')));
  });
});

describe('friction', () => {
  const at = (id: string): readonly [number, number] => [
    input(id, 'reynolds'),
    input(id, 'roughness_over_diameter'),
  ];
  test.each(rowsUnder('pickup.friction.colebrook').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    expectPublished(id, colebrook(...at(id)));
    expectPublished(id, frictionFactor(...at(id)));
  });
  test.each(rowsUnder('pickup.friction.haaland').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    expectPublished(id, haaland(...at(id)));
  });
  test.each(rowsUnder('pickup.friction.swamee-jain').map(({ id }) => [title(id), id]))(
    'a second explicit formula agrees within 2.2 %%: %s',
    (_, id) => {
      const [re, rough] = at(id);
      const explicit = 0.25 / Math.log10(rough / 3.7 + 5.74 / re ** 0.9) ** 2;
      expectPublished(id, explicit);
      expectWithin(colebrook(re, rough), explicit, 0.022 * explicit, 'friction factor');
    },
  );
  test(title('pickup.laminar.head-loss'), () => {
    const id = 'pickup.laminar.head-loss';
    const bore = input(id, 'diameter_mm');
    const rate = input(id, 'flow_m3_s') * 1e9;
    const speed = rate / ((Math.PI * bore ** 2) / 4);
    const viscosity = (speed * bore) / input(id, 'reynolds');
    const density = 1000;
    const { straight, friction } = tubeLoss(
      { bore, length: 1e6, entrance: 'bell', bends: [] },
      { rate, viscosity, density },
    );
    expectWithin(friction, 64 / 800, 1e-15, 'friction factor');
    // N/mm² over ρg is a head; 1 N/mm² of water is 101.97 m.
    expectPublished(id, (straight * 1e6) / (density * 9.80665));
  });
  test(title('pickup.pipe.friction'), () => {
    const id = 'pickup.pipe.friction';
    const [q, d, nu] = [input(id, 'flow_m3_s'), input(id, 'diameter_m'), input(id, 'viscosity_m2_s')];
    const velocity = q / ((Math.PI * d ** 2) / 4);
    const f = frictionFactor((velocity * d) / nu, input(id, 'roughness_over_diameter'));
    expectPublished(id, f);
    const head = (f * input(id, 'length_m') * velocity ** 2) / (d * 2 * 9.80665);
    expectPublished('pickup.pipe.head-loss', head);
  });
  test('the factor runs without a jump from laminar to turbulent', () => {
    for (const re of [2300, 4000]) {
      const [below, above] = [frictionFactor(re * (1 - 1e-9), 1e-4), frictionFactor(re * (1 + 1e-9), 1e-4)];
      expectWithin(above, below, 1e-9, `factor at Re ${re}`);
    }
  });
});

describe('fittings', () => {
  test.each(rowsUnder('pickup.entrance').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    expectPublished(id, entranceLoss(id.split('.').at(-1) as Entrance));
  });
  test.each(rowsUnder('pickup.bend').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    expectPublished(id, bendRatio(input(id, 'bend_radius_over_bore')));
  });
  test('between two rows of the table a bend lies between them, beyond them at the last', () => {
    expectWithin(bendRatio(1.25), 17, 1e-12, 'K/f');
    expect(bendRatio(0.5)).toBe(20);
    expect(bendRatio(9)).toBe(17);
  });
});
