import { floorProfile } from 'pan-core/pan/index.js';
import { cutParts, sheetFindings } from 'pan-core/sheet/index.js';
import { expect, it } from 'vitest';
import { sampleDesign } from '../sample-design.js';

const smallestHole = (change: Parameters<typeof sampleDesign>[0]) => {
  const design = sampleDesign(change);
  const profile = floorProfile(design);
  return sheetFindings(design, profile, cutParts(design, profile, [], [])).find(
    (f) => f.id === 'smallest_hole',
  );
};

it('an M8 hole of 9 mm in a 10 mm flange is drilled, and no warning', () => {
  const found = smallestHole(() => {});
  expect(found).toMatchObject({ status: 'pass', value: 9, limit: null });
  expect(found?.because).toMatch(/drilled/);
});

it('a hole narrower than thin sheet still warns, and so does one under a limit of one’s own', () => {
  const small = smallestHole((d) => {
    if (d.drain !== null) d.drain.bung = 2;
  });
  expect(small).toMatchObject({ status: 'warn', value: 2, limit: 3 });
  const own = smallestHole((d) => {
    d.limits.smallest_hole = 9.5;
  });
  expect(own).toMatchObject({ status: 'warn', value: 9, limit: 9.5 });
});
