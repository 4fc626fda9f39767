import { checkScreen } from 'pan-cli/terminal/check-screen.js';
import { columns } from 'pan-cli/terminal/wrap.js';
import { buildPan, checkDesign, crankDips, createOilSystem, inventoryOf, rampAnswer } from 'pan-core';
import { expect, test } from 'vitest';
import { exampleText, read } from '../design-text.js';
import { expectWithin } from '../numbers.js';
import { plainScreen } from '../plain-screen.js';
import { sampleReport } from './terminal-report.js';

const demo = await read(exampleText('demo'));
const { design } = demo;
// Nothing guessed: one fill a case.
const report = checkDesign({ design, assumed: [], unknown: [] });
const { crank_dip } = report;
const throws = design.engine.crank?.throws ?? [];

test('every case has every throw, the deeper of held and settled', () => {
  const system = createOilSystem(buildPan(design));
  const { runningInPan } = inventoryOf(design.oil);
  expect(throws.length).toBe(6);
  expect(design.manoeuvres.length).toBeGreaterThan(0);
  expect(crank_dip.length).toBe(throws.length * design.manoeuvres.length);
  // The dips themselves are held to closed forms in crank-dip.test.ts.
  let apart = 0;
  design.manoeuvres.forEach((one, c) => {
    const [held, settled] = (['held', 'settled'] as const).map((state) =>
      crankDips(system.model, rampAnswer(system, runningInPan, one, state, one.via)),
    );
    throws.forEach((x, i) => {
      const row = crank_dip[c * throws.length + i];
      expect([row?.case, row?.throw, row?.x_mm]).toEqual([one.name, i + 1, x]);
      const depths = [held?.[i]?.depth, settled?.[i]?.depth].filter(
        (d): d is number => typeof d === 'number',
      );
      if (depths.length === 2 && depths[0] !== depths[1]) apart += 1;
      if (depths.length === 0) expect([row?.depth_mm, row?.state]).toEqual([null, null]);
      else expectWithin(row?.depth_mm, Math.max(...depths), 1e-9, `${one.name} ${i + 1}`);
    });
  });
  expect(apart).toBeGreaterThan(0);
});

test('the deepest throw of a case is the depth its check judges', () => {
  const judged = report.checks
    .filter(({ id }) => /^rods_(hard|long|trail)/.test(id))
    .map(({ value }) => value);
  const deepest = design.manoeuvres.flatMap(({ name }) => {
    const depths = crank_dip.flatMap((r) => (r.case === name && r.depth_mm !== null ? [r.depth_mm] : []));
    return depths.length === 0 ? [] : [Math.max(...depths)];
  });
  expect(judged).toEqual(deepest);
});

test.each([60, 80, 120])('at %s columns the table has each case once and no line too wide', (width) => {
  const text = checkScreen(sampleReport, plainScreen(width));
  for (const line of text.split('\n')) expect(columns(line)).toBeLessThanOrEqual(width);
  const heads = text.split('\n').filter((line) => /\bthrow +A\b|\bthrow +[B-Z]\b/.test(line));
  expect(heads.flatMap((line) => line.match(/\b[A-E]\b/g) ?? [])).toEqual(['A', 'B', 'C', 'D', 'E']);
  // 11.4 × 1 − 141 = −129.6
  expect(text).toContain('−130 mm');
});
