import { checkDesign } from 'pan-core/check/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { panSeams } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';
import { setOf, textAt } from '../interop/dxf-cut-set.js';
import { expectWithin } from '../numbers.js';

// The example's rail is 560 x 240, its pan 180 x 496 between x 32 and 528 in 3 mm sheet, its flange 10 mm; the
// front round has R 75, centre 60 above the rail, and 12 mm of metal below.
const { design } = await read(exampleText('two-piece'));
const files = setOf(design, 'pass');
const csvRows = (text: string): readonly (readonly string[])[] =>
  text
    .split('\r\n')
    .map((row) => row.replace(/"([^"]*)"/g, (_, words: string) => words.replaceAll(',', ';')).split(','));

describe('the cut set of a flange in two pieces', () => {
  it('has a drawing of each plate, a ring for each hole that comes later, and no cut there', async () => {
    const all = await files;
    const rear = textAt(all, '2-laser/flange-rear.dxf');
    expect(rear.match(/drill 8\.1 later/g)).toHaveLength(1);
    // Five and five bolts along the sides, three across the rear; the dowel is no cut.
    const circles = (text: string, layer: string): number =>
      [...text.matchAll(/\r?\n {2}0\r?\nCIRCLE\r?\n([\s\S]*?)(?=\r?\n {2}0\r?\n)/g)].filter((m) =>
        m[1]!.includes(layer),
      ).length;
    expect(circles(textAt(all, '2-laser/bare/flange-rear.dxf'), 'through')).toBe(13);
    for (const name of ['flange-front-left', 'flange-front-right', 'front-end-plate', 'strongback'])
      expect(
        all.some((file) => file.path === `2-laser/${name}.dxf`),
        name,
      ).toBe(true);
  });

  it('tells the drill table, the order and the manifest which holes come after welding', async () => {
    const all = await files;
    const rows = csvRows(textAt(all, '3-bench/drill-table.csv'));
    const later = rows.filter((row) => row[3] === 'after welding');
    expect(later.map((row) => [row[0], row[2], row[6]])).toEqual([
      ['flange-rear', '8 mm dowel; close', '8.1'],
      ['flange-front-left', '8 mm dowel; easy', '8.5'],
    ]);
    // From the blank's lower left corner, which is the rail's rear right one.
    expect(later[0]?.slice(4, 6)).toEqual(['45', '229']);
    expect(textAt(all, '2-laser/order.txt')).toContain(
      'to engrave and not to cut: 1; they are drilled after welding',
    );
    const manifest = JSON.parse(textAt(all, 'manifest.json'));
    const rear = manifest.parts.find((part: { name: string }) => part.name === 'flange rear');
    expect(rear.drilled_after_weld).toEqual([
      { what: '8 mm dowel, close', at_mm: [45, 229], diameter_mm: 8.1 },
    ]);
    expect(rear.holes).toBe(13);
  });

  it('welds the joint first, from both faces, and each end plate by its own edges', () => {
    const seams = panSeams(buildPan(design));
    const seam = (name: string) => seams.find((one) => one.name === name)!;
    expect(seams.slice(0, 3).map((one) => one.step)).toEqual(['plate', 'plate', 'plate']);
    // Each strip 120 − 90 − 3.2 wide, crossed at 45 degrees.
    for (const face of ['rail face', 'underside'])
      expectWithin(seam(`flange rear to flange front, ${face}`).length, 2 * Math.SQRT2 * 26.8, 1e-9, face);
    expect(seam('flange rear to flange front, underside').size).toBe(5);
    expectWithin(seam('front end plate to pan, outside').length, 174 * Math.acos(60 / 87), 1e-9, 'rim');
    expectWithin(seam('front end plate to pan, along the arc').length, 150 * Math.acos(60 / 75), 1e-9, 'arc');
    // Round the pan at the rail, inside edges, less the end plate's width.
    const half = Math.sqrt(87 ** 2 - 60 ** 2);
    expectWithin(seam('flange to pan, below').length, 2 * (496 + 180) - 2 * half, 1e-6, 'flange to pan');
  });

  it('says so in the weld order, the leak test and the list of things to buy', async () => {
    const all = await files;
    const order = textAt(all, '4-weld/order.txt');
    expect(order.indexOf('Flange, bolted flat to the strongback')).toBeLessThan(
      order.indexOf('Tack the shell'),
    );
    expect(order).toContain('Drill the 2 marked holes through the strongback');
    expect(order).toContain('trim the end wall to the arc');
    expect(textAt(all, '4-weld/leak-test.txt')).toContain('arc of each end plate open');
    expect(textAt(all, '5-buy/bought.txt')).toContain('R 75 mm, to fill a groove 4 x 4 mm');
  });
});

it('an end seal’s foot 3 mm lower lies deeper by 3 mm of the way to the surface, and its limit can be set', async () => {
  const level = changed(exampleText('two-piece'), 'dive_per_g: 1.5 deg', 'dive_per_g: 0 deg');
  const found = async (text: string) =>
    checkDesign(await read(text)).checks.find(({ id }) => id === 'end_seal_oil_front')!;
  const [here, lower] = [
    await found(level),
    await found(changed(level, '75, centre_above_rail: 60', '75, centre_above_rail: 57')),
  ];
  expect(here.status).toBe('warn');
  expect(here.because).toContain('firm stop');
  // Braking 0.7 g with the nose 2 degrees up: the surface's normal leans back by atan 0.7 less those 2 degrees.
  const lean = Math.atan(0.7) - (2 * Math.PI) / 180;
  expectWithin((lower.value ?? 0) - (here.value ?? 0), 3 * Math.cos(lean), 1e-9, 'deeper');
  const allowed = await found(`${level}limits: {end_seal_oil_front: 100}\n`);
  expect(allowed.status).toBe('pass');
});
