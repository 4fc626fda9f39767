import type { Design } from 'pan-core/design/index.js';
import { findMaterial, type Material, smallestBendRadius } from 'pan-core/design/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import { clearanceHole, cutParts, type SheetFinding, sheetFindings } from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { type Mutable, sampleDesign } from '../sample-design.js';
import { expectPublished, row, rowsUnder, title } from './rows.js';

/** Our material names against the tables' own. */
const named: Readonly<Record<string, string>> = {
  '6061-T6': 'aluminium 6061-T6',
  '5052-H32': 'aluminium 5052-H32',
  'soft-3003-1100': 'aluminium 3003-H14',
  '1020': 'mild steel',
  '304': 'stainless 304',
};

test('every row of the smallest inside radii', () => {
  const rows = rowsUnder('sheet.minimum-radius');
  expect(rows).toHaveLength(19);
  for (const one of rows) {
    const { material, thickness_in } = one.inputs as { material: string; thickness_in: number };
    const found = smallestBendRadius(findMaterial(named[material]!) as Material, thickness_in * 25.4);
    expectPublished(one.id, found / 25.4);
  }
});

test('every ISO 273 clearance hole', () => {
  const rows = rowsUnder('holes.clearance');
  expect(rows).toHaveLength(15);
  for (const one of rows) {
    const { thread, fit } = one.inputs as { thread: number; fit: 'fine' | 'medium' | 'coarse' };
    expectPublished(one.id, clearanceHole(thread, fit) ?? Number.NaN);
  }
});

const densities: readonly (readonly [string, string])[] = [
  ['sheet.density.carbon-steel', 'mild steel'],
  ['sheet.density.5052', 'aluminium 5052-H32'],
  ['sheet.density.6061', 'aluminium 6061-T6'],
  ['sheet.density.3003', 'aluminium 3003-H14'],
  ['sheet.density.304', 'stainless 304'],
];

test.each(densities)('%s', (id, key) => {
  expectPublished(id, (findMaterial(key)?.density ?? Number.NaN) * 1e6);
});

const findings = (change?: (d: Mutable<Design>) => void): readonly SheetFinding[] => {
  const design = sampleDesign(change);
  const profile = floorProfile(design);
  return sheetFindings(design, profile, cutParts(design, profile, [], []));
};

const limitOf = (id: string, change?: (d: Mutable<Design>) => void): number =>
  findings(change).find((f) => f.id === id)?.limit ?? Number.NaN;

/** Rules of thumb as the findings use them, on 3 mm sheet bent at 5 mm, a 10 mm flange and M8 medium holes. */
test(title('practice.bend.flange'), () => {
  expectPublished('practice.bend.flange', (limitOf('shortest_flange') - 5) / 3);
});

test(title('practice.bend.hole'), () => {
  expectPublished('practice.bend.hole', (limitOf('hole_to_bend') - 5) / 3);
});

test(title('practice.bolt-pitch'), () => {
  expectPublished('practice.bolt-pitch', limitOf('bolt_pitch') / 8);
});

test(title('practice.land'), () => {
  expectPublished('practice.land', limitOf('sealing_land'));
});

test(title('practice.smallest-hole'), () => {
  // A bung of 2 mm in the belly's 3 mm sheet.
  const limit = limitOf('smallest_hole', (d) => {
    if (d.drain !== null) d.drain.bung = 2;
  });
  expectPublished('practice.smallest-hole', limit / 3);
});

test(title('holes.edge-distance.en'), () => {
  expectPublished(
    'holes.edge-distance.en',
    limitOf('hole_edge') / (row('holes.clearance.M8.medium').value as number),
  );
});
