import { pageState } from 'pan-cli/page/state.js';
import { pageData } from 'pan-cli/report/page-data.js';
import { inventoryOf, mouthCase, oilIn } from 'pan-core';
import { expect, it } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';

// The page took one fill for all cases, where the commands take that of each case's own engine speed.
it('the page takes the oil of each case at its own engine speed', async () => {
  const text = changed(
    changed(exampleText('demo'), 'held_up: 1.2 L', 'held_up: [[1000, 0.6 L], [3000, 1.0 L], [6000, 1.6 L]]'),
    'left_turn: 1.2 g, for: 6 s',
    'left_turn: 1.2 g, for: 6 s, rpm: 2000',
  );
  const data = await pageData(await read(text), '0');
  // Poured 7.2 less filter 0.7 less held up at 6000, 2000 and 6000 rev/min.
  expect(data.limits.cases.map((one) => Math.round(one.in_pan_L * 1e6) / 1e6)).toEqual([4.9, 5.7, 4.9]);
  const { worst, system } = pageState(data);
  const cases = data.design.manoeuvres.map((manoeuvre) =>
    mouthCase(system, manoeuvre, [inventoryOf(oilIn(data.design.oil, manoeuvre)).runningInPan]),
  );
  expect(worst?.answer.pickup.submergence).toBe(Math.min(...cases.map((one) => one.worst)));
});
