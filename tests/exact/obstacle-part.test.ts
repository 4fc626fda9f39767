import { clearances } from 'pan-core/clearance/index.js';
import { boxPart } from 'pan-core/clearance/obstacle-part.js';
import { buildPan, outerSolids, platesOf } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { stepDesign } from '../sample-design.js';

type P = [number, number, number];

const BOX = { min: [0, -10, -5], max: [20, 10, 5] } as const;

test.each<[P, string | null]>([
  [[7, 3, 5], 'top face'],
  [[0, 3, -1], 'rear face'],
  [[20, 3, 5], 'top front edge'],
  [[4, 10, -5], 'bottom left edge'],
  [[0, -10, -5], 'bottom rear right corner'],
  [[7, 3, 1], null],
])('the place %j of a box is its %s', (p, part) => {
  expect(boxPart(BOX, p)).toBe(part);
});

/** The part of a box that is nearest to a pan with its sump from x −3 to 303, 203 deep and 103 to each side. */
const nearest = (min: P, max: P, rock = 0): string | null | undefined => {
  const design = stepDesign((d) => {
    d.engine.carries = [];
    d.engine.railHoles = [];
    d.drain = null;
    d.chassis.axes = 'pan';
    d.chassis.moves = { rock, up: 4, down: 4, foreAft: 3 };
    d.chassis.obstacles = [{ name: 'thing', shape: { kind: 'box', min, max }, clear: 15, plusMinus: 2 }];
  });
  const model = buildPan(design);
  const rows = clearances(design, outerSolids(design, model.profile), platesOf(model));
  return rows.find(({ name }) => name === 'thing')?.worstPart;
};

test.each<[string, P, P]>([
  // Below and behind the sump's rear foot: the edge that looks at it.
  ['top front edge', [-120, -400, -300], [-60, 400, -240]],
  // Below the left bottom edge of the sump, its rear end alongside.
  ['top right edge', [-500, 140, -300], [900, 200, -240]],
  // Wholly below the middle: a small face under a large one.
  ['top', [100, -20, -300], [140, 20, -240]],
])('a box beside the sump is nearest by its %s', (part, min, max) => {
  expect(nearest(min, max)).toMatch(new RegExp(`^${part}`));
  expect(nearest(min, max, 0.035)).toMatch(new RegExp(`^${part}`));
});
