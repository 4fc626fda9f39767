import { readFileSync } from 'node:fs';
import { readDesignFile } from 'pan-cli/read/index.js';
import { type Clearance, clearances } from 'pan-core/clearance/index.js';
import { buildPan, outerSolids, platesOf } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { example } from '../hostile/pan-command.js';
import { expectWithin } from '../numbers.js';

const crossmember = async (name: string): Promise<Clearance> => {
  const { design } = await readDesignFile(example(name));
  const model = buildPan(design);
  const all = clearances(design, outerSolids(design, model.profile), platesOf(model));
  return all.find(({ kind, name: of }) => kind === 'chassis' && of === 'crossmember')!;
};

test('the example’s scan holds a few hundred triangles', () => {
  const bytes = readFileSync(new URL('../../packages/pan-cli/examples/crossmember.stl', import.meta.url));
  expect(bytes.readUInt32LE(80)).toBe((bytes.length - 84) / 50);
  expect(bytes.readUInt32LE(80)).toBeGreaterThan(200);
});

// The same crossmember is a box in the other example; its numbers are exact in single precision, and a scan in movement is searched to 1e-5.
test('a scanned crossmember stands where the same one given as a box does, and its point is named', async () => {
  const [scan, box] = [await crossmember('scanned-crossmember'), await crossmember('demo')];
  expectWithin(scan.distance ?? Number.NaN, box.distance ?? Number.NaN, 1e-9, 'at rest');
  expectWithin(scan.worst ?? Number.NaN, box.worst ?? Number.NaN, 1e-5, 'at its worst');
  expect(scan.between[1]).toBe('crossmember');
  expect(scan.because).toMatch(/On the scan, in its own axes: -?[\d.]+, -?[\d.]+, -?[\d.]+ mm\./);
  expect(scan.because).toContain('Placed by 3 points to within 0.0 mm.');
});
