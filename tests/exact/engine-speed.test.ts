import { checkDesign, limitsReport } from 'pan-core/check/index.js';
import { atSpeed, createOilSystem, inventoryOf, limitRing, oilIn, surgeReport } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { changed, exampleText, keyOf, problemsIn, read } from '../design-text.js';
import { expectWithin } from '../numbers.js';

const HELD = 'held_up: [[1000, 0.6 L], [3000, 1.0 L], [6000, 1.6 L]]';
const PUMP = 'pump: [[1000, 12 L/min], [5000, 50 L/min]]';

const bySpeed = (more: (text: string) => string = (text) => text): string =>
  more(changed(changed(exampleText('demo'), 'held_up: 1.2 L', HELD), 'pump: 45 L/min', PUMP));

const slowTurn = (text: string): string =>
  changed(text, 'left_turn: 1.2 g, for: 6 s', 'left_turn: 1.2 g, for: 6 s, rpm: 2000');

describe('held-up oil and pump flow by engine speed', async () => {
  it('is straight between the speeds given and constant beyond them', () => {
    const curve = [
      [1000, 6],
      [3000, 10],
      [6000, 16],
    ] as const;
    const found = [500, 1000, 2000, 3000, 4500, 6000, 9000].map((rpm) => atSpeed(curve, rpm));
    expect(found).toEqual([6, 6, 8, 10, 13, 16, 16]);
  });

  const { design, assumed } = await read(bySpeed(slowTurn));
  const system = createOilSystem(buildPan(design));

  it('a case takes its own speed, or the highest given, which is then assumed', () => {
    expect(design.manoeuvres.map(({ rpm }) => rpm)).toEqual([6000, 2000, 6000]);
    expect(assumed.filter(({ path }) => path.at(-1) === 'rpm').map(({ path }) => path[1])).toEqual([0, 2]);
    const [fast, slow] = design.manoeuvres.map((one) => oilIn(design.oil, one));
    expectWithin(fast?.heldUp, 1.6e6, 1e-9, 'held up, mm³');
    expectWithin(slow?.heldUp, 0.8e6, 1e-9, 'held up, mm³');
    expectWithin(fast?.pump, 50e6 / 60, 1e-9, 'pump, mm³/s');
    expectWithin(slow?.pump, 21.5e6 / 60, 1e-9, 'pump, mm³/s');
    // Poured 7.2 less filter 0.7 less held up.
    expectWithin(inventoryOf(slow as typeof design.oil).runningInPan, 5.7e6, 1e-9, 'mm³');
  });

  it('reaches the checks, the limits and the surge runs', () => {
    const report = checkDesign({ design, assumed, unknown: [] });
    expect(report.checks.find(({ id }) => id === 'mouth_held_long_left')?.because).toContain(
      '5.7 L in the pan',
    );
    expect(report.checks.find(({ id }) => id === 'mouth_held_hard_stop')?.because).toContain(
      '4.9 L in the pan',
    );
    const inPan = (one: { readonly in_pan_L: number }) => Math.round(one.in_pan_L * 1e6) / 1e6;
    const limits = limitsReport(
      { design, assumed, unknown: [] },
      system,
      4.9e6,
      limitRing(system, 4.9e6, 4),
      (manoeuvre) => inventoryOf(oilIn(design.oil, manoeuvre)).runningInPan,
    );
    expect(limits.cases.map(inPan)).toEqual([4.9, 5.7, 4.9]);
    const path = {
      seconds: 0.2,
      loadedUntil: 0.2,
      corners: [],
      at: () => ({ forward: 0, left: 0, grade: 0 }),
    };
    const { cases } = surgeReport(system, [
      { name: 'fast', path },
      { name: 'slow', rpm: 2000, path },
    ]);
    expect(cases.map(inPan)).toEqual([4.9, 5.7]);
    expectWithin(cases[1]?.pump_L_min ?? 0, 21.5, 1e-9, 'L/min');
  });

  it('the oil under the rods is looked at where most of it is in the pan', () => {
    const under = (text: string) =>
      read(text).then(
        (one) => checkDesign(one).checks.find(({ id }) => id === 'running_level')?.value ?? Number.NaN,
      );
    return Promise.all([
      under(bySpeed()),
      under(changed(exampleText('demo'), 'held_up: 1.2 L', 'held_up: 0.6 L')),
    ]).then(([curve, single]) => expectWithin(curve, single as number, 1e-9, 'mm'));
  });

  it('speeds that do not rise are refused in their place', async () => {
    const text = changed(bySpeed(), '[3000, 1.0 L]', '[900, 1.0 L]');
    const [problem] = await problemsIn(text);
    expect(keyOf(problem as NonNullable<typeof problem>)).toBe('oil.held_up.1');
  });
});
