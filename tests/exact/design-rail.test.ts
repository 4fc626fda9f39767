import { describe, expect, it } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';
import { expectWithin } from '../numbers.js';

const demo = exampleText('demo');

describe('the rail as traced', () => {
  const outline = '[[0, -100], [500, -120], [500, 90], [0, 110]]';
  const rail = (seen: string): string =>
    changed(
      demo,
      'rail: {length: 690, width: 250, seen_from: below}',
      `rail: {outline: ${outline}${seen === '' ? '' : `, seen_from: ${seen}`}}`,
    ).replace(/rail_holes: .*/, 'rail_holes: [{at: [10, 70], size: M8}, {at: [20, -80], size: M6}]');

  it('from above it is taken as it stands', async () => {
    const { engine } = (await read(rail('above'))).design;
    expect(engine.rail.outline).toEqual([
      [0, -100],
      [500, -120],
      [500, 90],
      [0, 110],
    ]);
    expect(engine.railHoles).toEqual([
      { at: [10, 70], thread: 8 },
      { at: [20, -80], thread: 6 },
    ]);
  });

  it('from below y is turned over, and the corners still run counter-clockwise', async () => {
    const { engine } = (await read(rail('below'))).design;
    expect([...engine.rail.outline].sort((a, b) => a[0] - b[0] || a[1] - b[1])).toEqual([
      [0, -110],
      [0, 100],
      [500, -90],
      [500, 120],
    ]);
    const area = engine.rail.outline.reduce((sum, [x, y], i, all) => {
      const [nextX, nextY] = all[(i + 1) % all.length] as readonly [number, number];
      return sum + (x * nextY - nextX * y) / 2;
    }, 0);
    // Trapezium: mean width (210 + 210) / 2 over 500 mm.
    expectWithin(area, 105_000, 1e-9);
    expect(engine.railHoles).toEqual([
      { at: [10, -70], thread: 8 },
      { at: [20, 80], thread: 6 },
    ]);
  });

  it('not said, it is read as from above and listed as unknown', async () => {
    const { design, unknown } = await read(rail(''));
    expect(design.engine.rail.seenFrom).toBeNull();
    expect(unknown.map(({ path }) => path.join('.'))).toEqual(['engine.rail.seen_from']);
  });

  it('a rectangle with mirrored holes needs no side, one odd hole does', async () => {
    const even = demo.replace(', seen_from: below', '');
    expect((await read(even)).unknown).toEqual([]);
    const odd = changed(even, 'y: [-57, 0, 57]', 'y: [-57, 0, 50]');
    expect((await read(odd)).unknown.map(({ path }) => path.join('.'))).toEqual(['engine.rail.seen_from']);
  });
});
