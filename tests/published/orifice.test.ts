import { AT_REST, headIntegral, notchFlow, rehbock, stepsPath, surge } from 'pan-core/oil/index.js';
import { describe, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { drainTank, twoTanks } from '../surge-tank.js';
import { roomOil, timeBelow } from '../surge-time.js';
import { expectPublished, row, title } from './rows.js';

const FOOT = 304.8;
/** mm/s², as the program has it. */
const GRAVITY = 9806.65;

const input = (id: string, name: string): number => {
  const value = row(id).inputs[name];
  if (typeof value !== 'number') throw new Error(`${id} has no input ${name}`);
  return value;
};

const still = (seconds: number) => stepsPath([{ load: AT_REST, ramp: 0, seconds }]);

/** Seconds a run takes; the program's gravity is standard, and times go as 1/√g. */
const drained = (id: string, gravity: number): number => {
  const area = (Math.PI / 4) * (FOOT * input(id, 'tank_diameter_ft')) ** 2;
  const [from, to] = [FOOT * input(id, 'from_ft'), FOOT * input(id, 'to_ft')];
  const width = area / 1000;
  const tank = { length: 1000, width, depth: 4500 };
  const run = surge(drainTank(tank, 1900, 25.4 ** 2 * input(id, 'opening_in2')), still(100), {
    placed: [{ at: [500, 0, -1800], volume: area * from }],
    discharge: input(id, 'discharge'),
    pump: null,
    every: 0.02,
  });
  const t = timeBelow(run.series.time, roomOil(run, /sump 0 to 1900 mm down/), area * to);
  return t * Math.sqrt(GRAVITY / gravity);
};

describe('a tank draining through its floor, run in time', () => {
  test(title('orifice.drain.printed'), () =>
    expectPublished('orifice.drain.printed', drained('orifice.drain.printed', FOOT * 32.2)),
  );
  test.each(['orifice.drain.g-32.2', 'orifice.drain.g-32.174'].map((id) => [title(id), id]))('%s', (_, id) =>
    expectPublished(id, drained(id, FOOT * input(id, 'gravity_ft_s2'))),
  );
});

test(title('orifice.two-tanks'), () => {
  const id = 'orifice.two-tanks';
  const [a1, a2] = row(id).inputs.areas_m2 as [number, number];
  const width = 1000;
  const split = (1e6 * a1) / width;
  const system = twoTanks(
    { length: (1e6 * (a1 + a2)) / width, width, depth: 3500 },
    split,
    input(id, 'opening_diameter_mm'),
  );
  const run = surge(system, still(30), {
    placed: [
      { at: [split / 2, 0, -3000], volume: 1e6 * a1 * (1200 + 1000 * input(id, 'from_m')) },
      { at: [split + 100, 0, -3000], volume: 1e6 * a2 * 1200 },
    ],
    discharge: input(id, 'discharge'),
    pump: null,
    every: 0.01,
  });
  const [rear, front] = [roomOil(run, /x 0 to 2000 mm/), roomOil(run, /x 2000 to 2800 mm/)];
  const gap = rear.map((v, i) => v / (1e6 * a1) - (front[i] as number) / (1e6 * a2));
  const t = timeBelow(run.series.time, gap, 1000 * input(id, 'to_m'));
  expectPublished(id, t * Math.sqrt(GRAVITY / (1000 * input(id, 'gravity_m_s2'))));
});

describe('a rectangular notch', () => {
  const litres = (id: string): number =>
    notchFlow(
      input(id, 'discharge'),
      1000 * input(id, 'width_m'),
      1000 * input(id, 'head_m'),
      1000 * input(id, 'gravity_m_s2'),
    ) / 1e6;
  test.each(['orifice.notch', 'orifice.notch.printed'].map((id) => [title(id), id]))('%s', (_, id) =>
    expectPublished(id, litres(id)),
  );
  test('measured over an opening of any shape, a rectangle gives the same', () => {
    const id = 'orifice.notch';
    const [width, head] = [1000 * input(id, 'width_m'), 1000 * input(id, 'head_m')];
    const shape = {
      triangles: Int32Array.from([0, 1, 2, 0, 2, 3]),
      areas: Float64Array.from([width * 300, width * 300]),
      values: new Float64Array(4),
    };
    const integral = headIntegral(shape, Float64Array.from([0, 0, 600, 600]), head, -100, 1e-6);
    const flow = input(id, 'discharge') * Math.sqrt(2 * 1000 * input(id, 'gravity_m_s2')) * integral;
    expectWithin(flow / 1e6, litres(id), 1e-12 * litres(id), 'L/s');
  });
});

describe('discharge coefficients', () => {
  test(title('orifice.rehbock'), () =>
    expectPublished('orifice.rehbock', rehbock(input('orifice.rehbock', 'head_over_sill'))),
  );
  test(title('orifice.sharp-discharge'), async () => {
    const { practice } = await import('pan-core/oil/surge/practice.js');
    expectPublished('orifice.sharp-discharge', practice('orifice'));
  });
});
