import { pathArea, pathBox, pathLength } from 'pan-core/geometry/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign, stepDesign } from '../sample-design.js';
import { cut, named, whole } from '../sheet-trial.js';

describe('a wing', () => {
  /** Level floor 160 down, wing top level at 100, 60 out, from x 50 to 250, on the left. */
  const design = stepDesign((d) => {
    d.pan.floor = [
      [700, 50],
      [300, 50],
      [300, 160],
      [0, 160],
    ];
    d.pan.joints.welded = [];
    d.pan.wings = [
      {
        name: 'pocket',
        side: 'left',
        rear: 50,
        front: 250,
        topDown: { rear: 100, front: 100 },
        topFall: 0,
        beyondWall: { rear: 60, front: 60 },
      },
    ];
  });
  const parts = cut(design);
  const bend = (Math.PI / 2) * (5 + 0.43 * 3);

  test('strip: floor 60, wall 60, top 60 less a thickness to the side plate’s outside', () => {
    const strip = named(parts, 'pocket strip');
    expectWithin(strip.flat[0], 200, 1e-9, 'along x');
    expectWithin(strip.flat[1], 60 + 60 + 57 - 4 * 5 + 2 * bend, 1e-9, 'unfolded');
    expect(strip.folds.map((f) => f.direction)).toEqual(['up', 'up']);
    expect(strip.notes.join(' ')).toContain('Seam to the belly: 200 mm');
  });

  test('caps: the section, a thickness short of the pan, two corners rounded', () => {
    for (const end of ['rear', 'front']) {
      const cap = named(parts, `pocket ${end} cap`);
      expectWithin(cap.area, 57 * 60 - 2 * (1 - Math.PI / 4) * 25, 1e-9, end);
    }
  });

  test('side plate: the opening reaches the floor', () => {
    const [left, right] = [named(parts, 'side left'), named(parts, 'side right')];
    expectWithin(right.area - left.area, 200 * 60, 1e-8, 'opening');
    expect(left.openings).toEqual([]);
  });

  test('the same wing on the other side is its mirror image', () => {
    const other = cut({
      ...design,
      pan: { ...design.pan, wings: [{ ...design.pan.wings[0]!, side: 'right' }] },
    });
    expectWithin(
      pathArea(named(other, 'pocket strip').outline),
      pathArea(named(parts, 'pocket strip').outline),
      1e-8,
      'area',
    );
    expectWithin(named(other, 'side right').area, named(parts, 'side left').area, 1e-8, 'side');
  });
});

describe('notches', () => {
  test('a tunnel across the shallow: both sides, the belly and its three plates', () => {
    const design = stepDesign((d) => {
      d.pan.notches = [{ kind: 'box', name: 'beam', min: [400, -300, -80], max: [500, 300, -30] }];
    });
    const parts = whole(design);
    const plain = named(cut(stepDesign()), 'side left').area;
    expectWithin(named(parts, 'side left').area, plain - 100 * 20, 1e-8, 'side');
    const shallow = parts.filter((p) => p.name.startsWith('belly 4'));
    expect(shallow.map((p) => p.flat[0])).toEqual([100, 200]);
    expectWithin(named(parts, 'beam roof').area, 100 * 200, 1e-7, 'roof');
    // The upright plates butt against the roof's underside.
    for (const face of ['rear', 'front']) {
      const plate = named(parts, `beam ${face} plate`);
      expectWithin(plate.area, 200 * (20 - 3), 1e-7, face);
    }
  });

  test('a box in the middle of the floor leaves an opening in the belly and five plates', () => {
    const design = stepDesign((d) => {
      d.pan.joints.welded = [];
      d.pan.notches = [{ kind: 'box', name: 'bolt', min: [430, -20, -80], max: [470, 30, -35] }];
    });
    const parts = whole(design);
    const belly = named(parts, 'belly');
    expect(belly.openings).toHaveLength(1);
    expectWithin(-pathArea(belly.openings[0]!), 40 * 50, 1e-8, 'opening');
    expect(parts.filter((p) => p.name.startsWith('bolt'))).toHaveLength(5);
  });

  test('a box over a fold is cut across the bend zone', () => {
    const design = stepDesign((d) => {
      d.pan.joints.welded = [];
      d.pan.notches = [{ kind: 'box', name: 'corner', min: [250, -20, -300], max: [350, 30, -150] }];
    });
    const belly = named(cut(design), 'belly');
    expect(belly.openings).toHaveLength(1);
    // 50 along the floor and 50 up the step, the corner's 2R off and its bend on.
    const along = 50 + 50 - 10 + (Math.PI / 2) * (5 + 0.43 * 3);
    const { min, max } = pathBox(belly.openings[0]!);
    expectWithin(max[0] - min[0], along, 1e-6, 'length');
    expectWithin(-pathArea(belly.openings[0]!), along * 50, 1e-4, 'area');
  });
});

describe('baffles', () => {
  test('lid and door wall are 0.5 mm smaller on every side; the door comes with flap, strip and stop', () => {
    const parts = whole(
      sampleDesign((d) => {
        d.pan.wings = [];
      }),
    );
    expectWithin(named(parts, 'lid').area, 209 * 189, 1e-6, 'lid');
    const wall = named(parts, 'door wall');
    expect(wall.openings).toHaveLength(2);
    expectWithin(
      wall.openings.reduce((s, o) => s - pathArea(o), 0),
      2 * 60 * 45,
      1e-8,
      'doors',
    );
    const flap = named(parts, 'door wall door flap');
    expectWithin(pathLength(flap.outline), 2 * (72 + 69), 1e-10, 'flap');
  });

  test('every part lists what a shop needs', () => {
    for (const part of whole(sampleDesign())) {
      expect(part.material, part.name).not.toBe('');
      expect(part.notes.length, part.name).toBeGreaterThan(0);
      expect(part.mass, part.name).toBeGreaterThan(0);
      const box = pathBox(part.outline);
      expectWithin(box.min[0], 0, 1e-9, part.name);
      expectWithin(box.min[1], 0, 1e-9, part.name);
      expectWithin(box.max[0], part.flat[0], 1e-9, part.name);
      expect(Object.isFrozen(part.outline)).toBe(true);
    }
  });
});
