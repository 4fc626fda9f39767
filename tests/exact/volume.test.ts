import type { Design } from 'pan-core/design/index.js';
import { createOilSystem, rampAnswer, restAnswer } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, stepDesign } from '../sample-design.js';

const RELATIVE = 1e-12;
const near = (actual: number | undefined, expected: number): void =>
  expectWithin(actual ?? Number.NaN, expected, Math.abs(expected) * RELATIVE);

/** A pan with one floor from x 0 to 600 and straight sides 100 from the middle; the crankcase above it is open. */
const plain = (change: (d: Mutable<Design>) => void): Design =>
  stepDesign((d) => {
    d.engine.rail.outline = [
      [-25, -125],
      [625, -125],
      [625, 125],
      [-25, 125],
    ];
    d.pan.floor = [
      [600, 120],
      [0, 120],
    ];
    d.pan.left = [
      [0, 100],
      [600, 100],
    ];
    d.pan.right = [
      [0, 100],
      [600, 100],
    ];
    d.pan.joints.welded = [0, 1];
    d.pan.sumpFrom = 300;
    change(d);
  });

const sharp = (design: Design): number => {
  const { sharp: s } = buildPan(design);
  return s.shallow + s.sump;
};
const surface = (design: Design, volume: number): number | undefined =>
  restAnswer(createOilSystem(buildPan(design)), volume).pools.find((p) => p.hasPickup)?.surface;

describe('volumes in closed form', () => {
  it('box: 600 × 200 × 120', () => near(sharp(plain(() => {})), 600 * 200 * 120));

  it('prism with a sloped floor 80 to 160: mean depth 120', () => {
    near(
      sharp(
        plain((d) => {
          d.pan.floor = [
            [600, 80],
            [0, 160],
          ];
        }),
      ),
      600 * 200 * 120,
    );
  });

  it('wedge whose floor runs out at the rail: half the box', () => {
    near(
      sharp(
        plain((d) => {
          d.pan.floor = [
            [600, 0],
            [0, 120],
          ];
        }),
      ),
      (600 * 200 * 120) / 2,
    );
  });

  it('tapered outline, half-width 60 to 100 both sides: 600 × 160 × 120', () => {
    near(
      sharp(
        plain((d) => {
          d.pan.left = [
            [0, 100],
            [600, 60],
          ];
          d.pan.right = [
            [0, 100],
            [600, 60],
          ];
        }),
      ),
      600 * 160 * 120,
    );
  });

  it('tapered and sloped: the integral of a product of two linear functions, L(2ab + ad + cb + 2cd)/6', () => {
    const [a, c] = [200, 120];
    const [b, e] = [160, 80];
    near(
      sharp(
        plain((d) => {
          d.pan.floor = [
            [600, e],
            [0, b],
          ];
          d.pan.left = [
            [0, 100],
            [600, 60],
          ];
          d.pan.right = [
            [0, 100],
            [600, 60],
          ];
        }),
      ),
      (600 * (2 * a * b + a * e + c * b + 2 * c * e)) / 6,
    );
  });

  it('wing with a level top: 240 × 60 × (120 − 50) more', () => {
    near(
      sharp(
        plain((d) => {
          d.pan.wings = [
            {
              name: 'w',
              side: 'left',
              rear: 30,
              front: 270,
              topDown: { rear: 50, front: 50 },
              topFall: 0,
              beyondWall: { rear: 60, front: 60 },
            },
          ];
        }),
      ),
      600 * 200 * 120 + 240 * 60 * 70,
    );
  });

  it('wing whose top falls outward and forward: mean of its corner heights', () => {
    const fall = Math.tan(0.1) * 60;
    near(
      sharp(
        plain((d) => {
          d.pan.wings = [
            {
              name: 'w',
              side: 'right',
              rear: 30,
              front: 270,
              topDown: { rear: 50, front: 70 },
              topFall: 0.1,
              beyondWall: { rear: 60, front: 60 },
            },
          ];
        }),
      ),
      600 * 200 * 120 + 240 * 60 * (120 - 60 - fall / 2),
    );
  });

  it('box notch 80 × 40 × 30 from the left wall, wedge notch of half a 60 × 50 face, 200 long', () => {
    near(
      sharp(
        plain((d) => {
          d.pan.notches = [{ kind: 'box', name: 'n', min: [200, 60, -60], max: [280, 300, -30] }];
        }),
      ),
      600 * 200 * 120 - 80 * 40 * 30,
    );
    near(
      sharp(
        plain((d) => {
          d.pan.notches = [
            {
              kind: 'wedge',
              name: 'n',
              triangle: [
                [540, -120],
                [600, -120],
                [600, -70],
              ],
              along: 'y',
              from: -100,
              to: 100,
            },
          ];
        }),
      ),
      600 * 200 * 120 - (60 * 50 * 200) / 2,
    );
  });

  it('shallow and sump part at the top of the step', () => {
    const { sharp: s } = buildPan(stepDesign());
    near(s.sump, 300 * 200 * 200);
    near(s.shallow, 400 * 200 * 50);
  });
});

describe('levels in closed form', () => {
  it('box at rest: 6 L stand 50 deep', () =>
    near(
      surface(
        plain(() => {}),
        6e6,
      ),
      120 - 50,
    ));

  it('sloped floor, still dry at one end: V = w·L·d²/2Δ', () => {
    const design = plain((d) => {
      d.pan.floor = [
        [600, 80],
        [0, 160],
      ];
    });
    const depth = Math.sqrt((2 * 2e6 * 80) / (200 * 600));
    expectWithin(surface(design, 2e6), 160 - depth, 1e-9);
  });

  it('tilted box: the level at the middle of its length does not move while the floor stays covered', () => {
    const design = plain((d) => {
      d.engine.tilt = { noseUp: 0.05, leanLeft: 0 };
      d.pickup.at = [300, 0];
    });
    expectWithin(surface(design, 6e6), 70, 1e-9);
  });

  it('box under 0.1 g braking: level plane, the same middle, submergence by the slope', () => {
    const design = plain((d) => {
      d.pickup.at = [300, 0];
    });
    const a = rampAnswer(
      createOilSystem(buildPan(design)),
      6e6,
      { forward: -0.1, left: 0, grade: 0 },
      'held',
    );
    expect(a.pools).toHaveLength(1);
    expectWithin(a.pools[0]?.surface, 70, 1e-9);
    // Along effective gravity: vertical depth × cos less the rim's reach × sin, tan = 0.1.
    const cos = 1 / Math.hypot(1, 0.1);
    expectWithin(a.pickup.submergence, (50 - 8) * cos - 30 * 0.1 * cos, 1e-9);
  });
});
