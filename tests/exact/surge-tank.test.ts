import { AT_REST, stepsPath, surge } from 'pan-core/oil/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { drainTank, twoTanks } from '../surge-tank.js';
import { roomOil, timeBelow } from '../surge-time.js';

const G = 9806.65;
const still = (seconds: number) => stepsPath([{ load: AT_REST, ramp: 0, seconds }]);

describe('draining through a hole in a floor', () => {
  const system = drainTank({ length: 1000, width: 800, depth: 4000 }, 1500, 2500);
  const area = 1000 * 800;
  it.each([0.62, 1])('takes 2A(√h₁ − √h₂)/(C_d·a·√(2g)) with C_d %s', (discharge) => {
    const [from, to] = [1400, 300];
    const expected = (2 * area * (Math.sqrt(from) - Math.sqrt(to))) / (discharge * 2500 * Math.sqrt(2 * G));
    const run = surge(system, still(Math.ceil(expected) + 2), {
      placed: [{ at: [500, 0, -1400], volume: area * from }],
      discharge,
      pump: null,
      every: 0.02,
    });
    const t = timeBelow(run.series.time, roomOil(run, /sump 0 to 1500 mm down/), area * to);
    expectWithin(t, expected, 1e-4 * expected, 's');
    expect(Math.abs(run.drift)).toBeLessThan(1e-12);
  });
});

describe('two tanks joined by a drowned hole', () => {
  const system = twoTanks({ length: 2800, width: 1000, depth: 3500 }, 2000, 100);
  const [a1, a2] = [2.0e6, 0.8e6];
  it('close from 1.5 m to 0.5 m in 2A₁A₂(√H₁ − √H₂)/(C_d·a·√(2g)(A₁ + A₂)), either way', () => {
    const hole = Math.PI * 50 ** 2;
    const expected =
      (2 * a1 * a2 * (Math.sqrt(1500) - Math.sqrt(500))) / (0.7 * hole * Math.sqrt(2 * G) * (a1 + a2));
    for (const rear of [true, false]) {
      const run = surge(system, still(Math.ceil(expected) + 2), {
        placed: [
          { at: [1000, 0, -3000], volume: a1 * (rear ? 3000 : 1500) },
          { at: [2400, 0, -3000], volume: a2 * (rear ? 1500 : 3000) },
        ],
        discharge: 0.7,
        pump: null,
        every: 0.02,
      });
      const back = roomOil(run, /x 0 to 2000 mm/);
      const front = roomOil(run, /x 2000 to 2800 mm/);
      const gap = back.map((v, i) => (rear ? 1 : -1) * (v / a1 - (front[i] as number) / a2));
      expectWithin(timeBelow(run.series.time, gap, 500), expected, 1e-4 * expected, 's');
      const [through] = run.passages;
      const moved = (rear ? 1 : -1) * ((back[0] as number) - (back.at(-1) as number));
      expectWithin(Math.max(through?.forth ?? 0, through?.back ?? 0), moved, 1e-5 * moved, 'mm³ through');
    }
  });
});
