import type { Load } from 'pan-core/design/index.js';
import {
  createOilSystem,
  type OilSystem,
  rampAnswer,
  type SurgeRun,
  stepsPath,
  surge,
} from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { sampleDesign, stepDesign } from '../sample-design.js';

const g = (forward: number, left = 0): Load => ({ forward, left, grade: 0 });

/** A load that comes on over 20 s and stays; no pump, tight doors, oil thin enough to come to rest. */
const long = (system: OilSystem, volume: number, load: Load, seconds: number): SurgeRun =>
  surge(system, stepsPath([{ load, ramp: 20, seconds }]), {
    volume,
    pump: null,
    doorLeak: 0,
    viscosity: 1,
    every: 5,
  });

const last = (a: Float64Array): number => a[a.length - 1] as number;

describe('left long enough, a run comes to the settled answer', () => {
  const step = createOilSystem(buildPan(stepDesign()));
  const sample = createOilSystem(buildPan(sampleDesign()));

  it('keeps the triangle under the 45° plane through a sharp lip, 2.25 L of 6', () => {
    const run = long(step, 6e6, g(-1), 400);
    expectWithin(last(run.series.mouthBay), 2.25e6, 1.5e3, 'mm³');
    expect(last(run.series.mouthBay)).toBeGreaterThan(2.25e6);
  });

  it.each([
    ['braking 1.1 g', g(-1.1)],
    ['braking 0.5 g', g(-0.5)],
    ['left turn 1.2 g', g(0, 1.2)],
    ['accelerating 0.8 g', g(0.8)],
  ])('stands over the mouth as the settled ramp does to 0.05 mm: %s', (_, load) => {
    const run = long(sample, 5.3e6, load, 200);
    const settled = rampAnswer(sample, 5.3e6, load, 'settled');
    expectWithin(last(run.series.submergence), settled.pickup.submergence, 0.05, 'mm');
  });

  it('comes nearer and nearer where a weep is the last to run', () => {
    const load = g(-0.7, -0.8);
    const settled = rampAnswer(sample, 5.3e6, load, 'settled').pickup.submergence;
    const { time, submergence } = long(sample, 5.3e6, load, 1000).series;
    const off = (t: number): number =>
      Math.abs((submergence[time.findIndex((v) => v >= t)] as number) - settled);
    expect(off(300)).toBeLessThan(off(100));
    expect(off(900)).toBeLessThan(off(300));
    expect(off(900)).toBeLessThan(0.6);
  });

  it.each([2, 4, 5, 6, 7, 8, 9, 11, 14])('over a random pan, seed %i, to 0.2 mm', (seed) => {
    const system = createOilSystem(randomPan(seed));
    const [angle, size] = [2.4 * seed, 0.4 + 0.05 * seed];
    const load = g(-size * Math.cos(angle), size * Math.sin(angle));
    const run = long(system, 3.5e6, load, 300);
    const settled = rampAnswer(system, 3.5e6, load, 'settled');
    expectWithin(last(run.series.submergence), settled.pickup.submergence, 0.2, 'mm');
    expect(Math.abs(run.drift)).toBeLessThan(1e-11);
  });
});
