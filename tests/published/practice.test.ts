import { type CheckReport, checkDesign } from 'pan-core/check/index.js';
import { type PresetName, presetManoeuvres } from 'pan-core/design/index.js';
import { PRACTICE, SAYINGS, TEST_PSI } from 'pan-core/weld/index.js';
import { describe, expect, test } from 'vitest';
import { changed, exampleText, read, SMALLEST } from '../design-text.js';
import { expectPublished, type Row, row, rowsUnder, title } from './rows.js';

const deg = Math.PI / 180;

/** Values taken where the design file says nothing. Lengths mm, oil L. */
describe('defaults', async () => {
  const { design, assumed } = await read(SMALLEST);
  const steel = await read(changed(SMALLEST, 'pan:', 'pan:\n  sheet: {material: mild steel}'));
  const { chassis, oil, pan, pickup } = design;
  const told: readonly (readonly [string, number])[] = [
    ['practice.mouth-gap', pickup.gap],
    ['practice.bore', pickup.bore],
    ['practice.held-up', oil.heldUp / 1e6],
    ['practice.galleries', oil.galleries / 1e6],
    ['practice.sheet.aluminium', pan.sheet.thickness],
    ['practice.sheet.steel', steel.design.pan.sheet.thickness],
    ['practice.flange.aluminium', pan.flange.thickness],
    ['practice.body-roll', chassis.body.rollPerG / deg],
    ['practice.body-pitch', chassis.body.divePerG / deg],
  ];
  test.each(told)('%s', (id, value) => expectPublished(id, value));

  test(title('practice.flange.steel'), () => {
    const { thickness } = steel.design.pan.flange;
    expectPublished('practice.flange.steel', thickness);
    expect(thickness).toBeGreaterThanOrEqual(row('practice.flange.steel').value as number);
  });

  test(title('practice.weep'), async () => {
    const walled = await read(`${SMALLEST}baffles: [{name: wall, across_at: 240}]\n`);
    const [wall] = walled.design.baffles;
    expectPublished('practice.weep', wall?.kind === 'wall' ? wall.weep : Number.NaN);
  });

  test(title('practice.clear.fixed'), async () => {
    const near = await read(
      `${SMALLEST}chassis: {axes: pan, obstacles: [{name: bar, box: [[0, 0, -300], [9, 9, -290]]}]}\n`,
    );
    expectPublished('practice.clear.fixed', near.design.chassis.obstacles[0]?.clear ?? Number.NaN);
  });

  test('every one of them is told as assumed', () => {
    const paths = assumed.map(({ path }) => path.join('.'));
    for (const path of ['pickup.gap', 'pickup.bore', 'oil.held_up', 'oil.galleries', 'pan.sheet.thickness']) {
      expect(paths).toContain(path);
    }
  });
});

describe('limits of the checks', async () => {
  const report: CheckReport = await checkDesign(await read(exampleText('demo')));
  const limitOf = (id: string): number => report.checks.find((check) => check.id === id)?.limit ?? Number.NaN;
  test.each([
    ['practice.level-under-sweep', 'running_level'],
    ['practice.rod-to-pan', 'clear_rods_to_pan'],
    ['practice.rod-to-tray', 'clear_rods_to_lid'],
    ['practice.ground', 'ground'],
  ])('%s', (id, check) => expectPublished(id, limitOf(check)));
});

describe('manoeuvre presets', () => {
  const presets: readonly (readonly [PresetName, readonly Row[]])[] = [
    ['street', rowsUnder('practice.preset.street')],
    ['autocross', rowsUnder('practice.preset.autocross')],
    ['track', rowsUnder('practice.preset.track')],
    ['slicks', rowsUnder('practice.preset.slicks')],
    ['drag', rowsUnder('practice.preset.drag')],
    ['rally', rowsUnder('practice.preset.rally')],
  ];
  test.each(presets)('%s', (name, rows) => {
    const found = presetManoeuvres(name);
    const most = (of: (one: (typeof found)[number]) => number): number => Math.max(...found.map(of));
    const values: Readonly<Record<string, number>> = {
      lateral: most((one) => one.left),
      brake: most((one) => -one.forward),
      accelerate: most((one) => one.forward),
      seconds: most((one) => one.seconds),
    };
    for (const { id } of rows) {
      expectPublished(id, values[id.split('.')[3] as string] ?? Number.NaN);
    }
  });

  test(title('practice.preset.combined'), () => {
    const both = presetManoeuvres('street').filter((one) => one.left !== 0 && one.forward !== 0);
    expect(both.length).toBeGreaterThan(0);
    for (const one of both) {
      // Of a turn of 0.8 g and a stop of 1 g.
      expectPublished('practice.preset.combined', Math.abs(one.left) / 0.8);
      expectPublished('practice.preset.combined', Math.abs(one.forward) / 1);
    }
  });
});

describe('welding and the leak test', () => {
  test(title('practice.tack-pitch'), () => {
    expectPublished('practice.tack-pitch', PRACTICE.tackPitch[0]);
    expect([...PRACTICE.tackPitch]).toEqual(row('practice.tack-pitch').inputs.range);
  });
  test(title('practice.stitch'), () => {
    expectPublished('practice.stitch', PRACTICE.stitch[0]);
    expect([...PRACTICE.stitch]).toEqual(row('practice.stitch').inputs.range);
  });
  test(title('practice.flange-flatness'), () => {
    expectPublished('practice.flange-flatness', PRACTICE.flatness);
    expect(PRACTICE.flatnessOver).toBe(300);
  });
  test(title('practice.settle'), () => {
    expectPublished('practice.settle', Number(/wait (\d+) minutes/.exec(SAYINGS.dipstick)?.[1]));
  });
  test(title('leak.practice.most'), () => {
    expectPublished('leak.practice.most', TEST_PSI.never);
    expect([TEST_PSI.low, TEST_PSI.high]).toEqual(row('leak.practice.most').inputs.range_psi);
  });
});
