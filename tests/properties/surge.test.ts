import type { Design, Manoeuvre } from 'pan-core/design/index.js';
import {
  createOilSystem,
  logPath,
  manoeuvrePath,
  type SurgeOptions,
  type SurgeRun,
  stepsPath,
  surge,
} from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { mirrored } from '../mirror-design.js';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';
import { sampleDesign, stepDesign } from '../sample-design.js';

const SEED = 20_260_711;

const run = (design: Design, manoeuvre: Manoeuvre, options: SurgeOptions = {}): SurgeRun =>
  surge(createOilSystem(buildPan(design)), manoeuvrePath(manoeuvre), options);

const stop: Manoeuvre = { name: 'stop', forward: -1.1, left: 0, grade: 0, seconds: 4, via: [] };
const turn: Manoeuvre = { name: 'turn', forward: 0, left: 1.3, grade: 0, seconds: 6, via: [] };
const trail: Manoeuvre = { name: 'trail', forward: -0.7, left: -0.8, grade: 0, seconds: 3, via: [] };

describe('oil in time', () => {
  const sample = createOilSystem(buildPan(sampleDesign()));

  it('is conserved to 1e-9 over an hour of driving, what is in the engine included', () => {
    const r = randomFrom(SEED);
    const steps = Array.from({ length: 450 }, () => ({
      load: { forward: 1.6 * r() - 1, left: 2 * r() - 1, grade: 0 },
      ramp: 2 * r(),
      seconds: 0,
    })).map((s) => ({ ...s, seconds: 8 - s.ramp }));
    const hour = surge(createOilSystem(buildPan(stepDesign())), stepsPath(steps), { volume: 4e6 });
    expect(hour.series.time.at(-1)).toBeGreaterThan(3590);
    expect(Math.abs(hour.drift), `seed ${SEED}`).toBeLessThan(1e-9);
    const { rooms, inEngine } = hour.series;
    const all = (i: number): number =>
      rooms.reduce((sum, room) => sum + (room.volume[i] as number), inEngine[i] as number);
    for (let i = 0; i < inEngine.length; i += 50)
      expectWithin(all(i), all(0), 1e-3 * all(0), `seed ${SEED}, row ${i}, oil told apart by room`);
  });

  it.each([stop, trail])('bares at a time that half the tolerance moves by less than 0.5 %: $name', (m) => {
    for (const swings of [true, false]) {
      const path = manoeuvrePath(m);
      const [one, half] = [1e-4, 5e-5].map(
        (tolerance) => surge(sample, path, { tolerance, swings }).cover.timeToBare,
      );
      expect(one).not.toBeNull();
      expectWithin(half, one as number, 0.005 * (one as number), 's');
    }
  });

  it('in a mirrored pan in a mirrored manoeuvre does the same', () => {
    const there = run(sampleDesign(), trail);
    const back = run(mirrored(sampleDesign()), { ...trail, left: 0.8 });
    expectWithin(back.cover.timeToBare, there.cover.timeToBare as number, 0.005, 's');
    expectWithin(back.cover.least, there.cover.least, 0.3, 'mm');
    expectWithin(back.cover.baredFor, there.cover.baredFor, 0.01, 's');
  });

  it('meets a door that never opens as it meets a wall without one', () => {
    // Plates without thickness: a door's hole would otherwise take metal out of the pan.
    const doored = sampleDesign((d) => {
      for (const b of d.baffles) b.thickness = 0;
    });
    const wall = sampleDesign((d) => {
      for (const b of d.baffles) {
        b.thickness = 0;
        if (b.kind === 'wall') b.doors = [];
      }
    });
    for (const m of [stop, trail]) {
      const shut = run(doored, m, { doorLeak: 0, doorHead: Number.POSITIVE_INFINITY });
      const none = run(wall, m);
      expectWithin(shut.cover.least, none.cover.least, 0.01, 'mm');
      expectWithin(shut.cover.timeToBare, none.cover.timeToBare as number, 1e-3, 's');
      for (const p of shut.passages) if (p.kind === 'door') expect(p.forth + p.back).toBe(0);
    }
  });

  it('runs through a door its own way, and the other way only as it leaks or is slow to shut', () => {
    const doors = (options: SurgeOptions) =>
      run(sampleDesign(), { ...stop, forward: 0.9 }, options).passages.filter((p) => p.kind === 'door');
    const [tight, leaky] = [doors({ doorLeak: 0, doorSeconds: 0.002 }), doors({ doorLeak: 0.1 })];
    expect(tight).toHaveLength(2);
    tight.forEach((door, i) => {
      expect(door.way).toBe('rearward');
      expect(door.forth).toBeGreaterThan(3e5);
      expect(door.back).toBeLessThan(0.02 * door.forth);
      expect(leaky[i]?.back).toBeGreaterThan(5 * door.back);
    });
  });

  it('runs slower through a weep when it is cold', () => {
    const through = (viscosity: number): number => {
      const { passages } = run(sampleDesign(), stop, { viscosity, pump: null });
      const weep = passages.find((p) => p.kind === 'weep');
      return (weep?.forth ?? 0) + (weep?.back ?? 0);
    };
    expect(through(2000)).toBeLessThan(0.5 * through(10));
  });

  it('with more of it, the pump bares the mouth later', () => {
    const times = [4e6, 4.6e6, 5.2e6].map((volume) => run(sampleDesign(), stop, { volume }).cover.timeToBare);
    expect(times[1]).toBeGreaterThan(times[0] as number);
    expect(times[2]).toBeGreaterThan(times[1] as number);
  });

  it('that comes back behind the lip lasts longer than oil that comes back ahead of it', () => {
    const long = { ...stop, seconds: 12 };
    const rear = run(sampleDesign(), long, { returnTo: 'rear' });
    const front = run(sampleDesign(), long, { returnTo: 'front' });
    expect(rear.cover.baredFor).toBeLessThan(front.cover.baredFor);
    expect(front.cover.timeToBare).toBeGreaterThan(0);
  });

  it('swings past where it would come to stand, and a lag makes no difference in the end', () => {
    const still = run(sampleDesign(), turn, { swings: false });
    const swung = run(sampleDesign(), turn);
    const peak = (r: SurgeRun): number => Math.max(...r.series.riseLeft.map(Math.abs));
    expect(peak(swung)).toBeGreaterThan(peak(still) + 0.05);
    expect(swung.cover.least).toBeLessThan(still.cover.least);
  });

  it('is the same whether its load is told as steps or logged every 20 ms', () => {
    const path = manoeuvrePath(stop);
    const time = Array.from({ length: Math.floor(path.seconds / 0.02) + 1 }, (_, i) => i * 0.02);
    const at = time.map((t) => path.at(t));
    const log = logPath({ time, forward: at.map((l) => l.forward), left: at.map((l) => l.left) });
    const [told, logged] = [surge(sample, path), surge(sample, log)];
    expectWithin(logged.cover.timeToBare, told.cover.timeToBare as number, 0.02, 's');
    expectWithin(logged.cover.least, told.cover.least, 0.5, 'mm');
  });

  it('says that a load shorter than one period is not resolved, and one longer is', () => {
    expect(run(sampleDesign(), { ...turn, seconds: 0.1 }).resolved).toBe(false);
    expect(run(sampleDesign(), turn).resolved).toBe(true);
  });

  it('stops when it is told to, tells how far it is on the way, and gives frozen results', () => {
    const told: number[] = [];
    const whole = surge(sample, manoeuvrePath(turn), {
      progress: (share) => {
        told.push(share);
        return true;
      },
    });
    expect(told.length).toBeGreaterThan(2);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(whole.finished).toBe(true);
    const cut = surge(sample, manoeuvrePath(turn), { progress: () => false });
    expect(cut.finished).toBe(false);
    expect(cut.series.time.length).toBeLessThan(whole.series.time.length);
    expect(Object.isFrozen(whole) && Object.isFrozen(whole.cover)).toBe(true);
  });

  it('refuses a log that runs backwards or has a hole, naming the sample', () => {
    const bad = (time: number[], forward = [0, 0, 0]): unknown => logPath({ time, forward, left: [0, 0, 0] });
    expect(() => bad([0, 2, 1])).toThrow(/Sample 3/);
    expect(() => bad([0, 1, 2], [0, Number.NaN, 0])).toThrow(/Sample 2/);
    expect(() => bad([0])).toThrow(/two samples/);
  });
});
