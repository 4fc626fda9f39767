import { bodyOf } from 'pan-core/clearance/body.js';
import { motionOf } from 'pan-core/clearance/engine-motion.js';
import { NO_ROCK } from 'pan-core/clearance/least-gap.js';
import { scanGap } from 'pan-core/clearance/scan-gap.js';
import { nearScan } from 'pan-core/clearance/scan-near.js';
import { placedTriangle, placeOfScan } from 'pan-core/clearance/scan-place.js';
import { wallsOf } from 'pan-core/clearance/scan-wall.js';
import { hullGap, NO_ROTATION, turnsAboutAxes } from 'pan-core/geometry/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { diceFrom, seedOr } from '../dice.js';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { type P3, scanOf, type Triangle } from '../scan-of.js';

const EXACT = { enough: Number.POSITIVE_INFINITY, slack: 1e-10 };

// Against every triangle with every solid, by the distance of two hulls.
test('one pass over a scan keeps the triangle that is nearest to a pan, however the scan is placed', () => {
  const seed = seedOr(90125);
  const dice = diceFrom(seed);
  let left = 0;
  for (let i = 0; i < 3; i++) {
    const { design, profile } = randomPan(seed + i);
    const body = bodyOf(outerSolids(design, profile ?? floorProfile(design)));
    const walls = wallsOf(body);
    const size = i === 1 ? 25.4 : 1;
    const triangles = Array.from({ length: 800 }, (): Triangle => {
      const middle: P3 = [dice.between(-900, 1500), dice.between(-800, 800), dice.between(-700, -260)];
      const long = dice.happens(0.5) ? 400 : dice.between(0, 20);
      const corner = (): P3 => [
        (middle[0] + dice.between(-long, long)) / size,
        (middle[1] + dice.between(-long, long)) / size,
        (middle[2] - dice.between(0, long / 4)) / size,
      ];
      return [corner(), corner(), corner()];
    });
    const scan = {
      ...scanOf(triangles),
      unit: i === 1 ? { name: 'in' as const, size } : { name: 'mm' as const, size },
      rotation: i === 2 ? turnsAboutAxes(0.05, -0.04, 0.3) : NO_ROTATION,
    };
    const { soup } = scan;
    if (soup === null) throw new Error('no soup');
    const place = placeOfScan(scan, motionOf(NO_ROTATION));
    const near = nearScan(walls, soup, place, 800);
    let least = Number.POSITIVE_INFINITY;
    for (let t = 0; t < soup.count; t++) {
      const points = placedTriangle(place, soup.corners, t);
      for (const { vertices } of body.solids) least = Math.min(least, hullGap(vertices, points).distance);
    }
    expectWithin(scanGap(walls, near, place, NO_ROCK, EXACT).distance, least, 1e-9, `seed ${seed}, pan ${i}`);
    left += soup.count - near.count;
  }
  expect(left, 'triangles left out').toBeGreaterThan(1200);
});
