import { expect, test } from 'vitest';
import { setOf, textAt } from '../interop/dxf-cut-set.js';
import { sampleDesign } from '../sample-design.js';

// The tube was bought from the first point of its route to the last, without its ways to the mouth and the port.
test('the tube to buy is as long as the tube to cut', async () => {
  const set = setOf(
    sampleDesign((d) => {
      d.pickup.route = [
        [d.pickup.at[0], 0, -60],
        [300, 75, -40],
        [560, 75, -40],
      ];
    }),
    'pass',
  );
  const cut = Number(/Cut (\d+) mm along/.exec(textAt(await set, '3-bench/pickup-tube.txt'))?.[1]);
  const bought = Number(/Pickup tube[^:]*: (\d+) mm along/.exec(textAt(await set, '5-buy/bought.txt'))?.[1]);
  expect(cut).toBeGreaterThan(0);
  expect(bought).toBe(Math.ceil(cut / 10) * 10);
});
