import type { PageData } from 'pan-cli/page/data.js';
import { nearestLine } from 'pan-cli/page/nearest-line.js';
import { pageData } from 'pan-cli/report/page-data.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { exampleText, read } from '../design-text.js';

let data: PageData;
beforeAll(async () => {
  data = await pageData(await read(exampleText('demo')), '0');
});

const span = ([a, b]: readonly [readonly number[], readonly number[]]): number =>
  Math.sqrt([0, 1, 2].reduce((sum, k) => sum + ((a[k] as number) - (b[k] as number)) ** 2, 0));

describe('what the page is told', () => {
  it('draws each clearance as long as the clearance engine says it is', () => {
    const drawn = data.fit.clearances.filter(({ name }) =>
      ['crossmember', 'bulkhead', 'ground'].includes(name),
    );
    expect(drawn.length).toBe(3);
    for (const { name, distance_mm } of drawn) {
      const line = nearestLine(data, name);
      // Corners of what is drawn are given to a tenth of a millimetre.
      expect(Math.abs(span(line ?? [[0], [0]]) - (distance_mm ?? 0)), name).toBeLessThan(0.15);
    }
  });

  it('points at a place alone where nothing is drawn to measure to', () => {
    const line = nearestLine(data, 'rods to pan');
    expect(line?.[0]).toEqual(line?.[1]);
    expect(nearestLine(data, 'no such clearance')).toBeNull();
  });

  it('lays out every part inside its own sheet', () => {
    for (const { name, corner, size_mm, outline } of data.parts) {
      const spots = [...outline.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [
        Number(m[1]),
        Number(m[2]),
      ]);
      for (const [x = 0, y = 0] of spots) {
        expect(x, name).toBeGreaterThan(corner[0] - 0.01);
        expect(x, name).toBeLessThan(corner[0] + size_mm[0] + 0.01);
        expect(y, name).toBeGreaterThan(corner[1] - 0.01);
        expect(y, name).toBeLessThan(corner[1] + size_mm[1] + 0.01);
      }
    }
  });
});
