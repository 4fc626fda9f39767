import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { pathArea, pathBox, pathDistance, pathLength } from 'pan-core/geometry/index.js';
import { buildPan, floorProfile, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { bendRule, cutParts, kFromBendTest, type Part } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign, stepDesign } from '../sample-design.js';

const cut = (design: Design): readonly Part[] => cutParts(design, floorProfile(design), [], []);
const whole = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};
const named = (parts: readonly Part[], name: string): Part => {
  const found = parts.find((p) => p.name === name);
  if (found === undefined) throw new Error(`No part ${name} among ${parts.map((p) => p.name).join(', ')}`);
  return found;
};

/** A plain trough: 400 long, 120 deep, 200 wide, 2 mm sheet bent at 3 mm; K 0.43 by the table. */
const trough = (change: (d: Mutable<Design>) => void = () => {}): Design =>
  stepDesign((d) => {
    d.pan.sheet = { material: 'mild steel', thickness: 2, bendRadius: 3 };
    d.pan.floor = [
      [400, 120],
      [0, 120],
    ];
    d.pan.joints.welded = [];
    change(d);
  });
const BEND = (Math.PI / 2) * (3 + 0.43 * 2);

describe('a trough', () => {
  const parts = cut(trough());

  test('belly: L₁ + L₂ + L₃ − 4R + 2 allowances by the width', () => {
    const belly = named(parts, 'belly');
    const length = 120 + 400 + 120 - 4 * 3 + 2 * BEND;
    expectWithin(belly.flat[0], length, 1e-9, 'length');
    expectWithin(belly.flat[1], 200, 1e-12, 'width');
    expectWithin(belly.area, length * 200, 1e-7, 'area');
    expectWithin(belly.cutLength, 2 * (length + 200), 1e-9, 'cut');
    expectWithin(belly.mass, length * 200 * 2 * 7.85e-6, 1e-12, 'mass');
    expect(belly.folds.map((f) => [f.name, f.direction])).toEqual([
      ['rear', 'up'],
      ['front', 'up'],
    ]);
    expectWithin(belly.folds[0]!.from[0], 120 - 3 + BEND / 2, 1e-10, 'rear fold');
    expectWithin(belly.folds[1]!.from[0], length - (120 - 3 + BEND / 2), 1e-9, 'front fold');
  });

  test('sides: the rectangle less two rounded corners, arcs true', () => {
    for (const name of ['side left', 'side right']) {
      const side = named(parts, name);
      expect(side.flat).toEqual([400, 120]);
      expectWithin(side.area, 400 * 120 - 2 * (1 - Math.PI / 4) * 9, 1e-9, 'area');
      expectWithin(side.cutLength, 1040 - 4 * 3 + Math.PI * 3, 1e-9, 'cut');
      expect(side.outline.filter((s) => s.kind === 'arc').map((s) => s.kind === 'arc' && s.radius)).toEqual([
        3, 3,
      ]);
    }
  });

  test('flange: rail less the pan’s outside with 0.2 mm all round, corners rounded about the pan’s own', () => {
    const flange = named(parts, 'flange');
    const d = 2 + 0.2;
    const opening = 400 * 200 + 2 * (400 + 200) * d + Math.PI * d * d;
    expectWithin(
      flange.openings.reduce((s, o) => s - pathArea(o), 0),
      opening,
      1e-8,
      'opening',
    );
    const holes = flange.holes.length * (Math.PI / 4) * 81;
    expectWithin(flange.area, 750 * 250 - opening - holes, 1e-7, 'area');
    expect(new Set(flange.holes.map((h) => h.diameter))).toEqual(new Set([9]));
  });

  test('flange: a bead of sealant marked in the middle of the narrowest land, round the whole opening', () => {
    const flange = named(parts, 'flange');
    const bead = flange.marks.find((m) => m.what.startsWith('sealant bead'))!;
    const opening = flange.openings[0]!;
    const lands = flange.holes.map((h) => pathDistance(opening, h.at) - h.diameter / 2);
    const land = Math.min(25, ...lands);
    expect(bead.path.every((s) => Math.abs(pathDistance(opening, s.from) - land / 2) < 1e-9)).toBe(true);
    for (const h of flange.holes)
      expect(pathDistance(bead.path, h.at)).toBeGreaterThan(h.diameter / 2 + land / 2 - 1e-9);
  });

  test('strongback: flange’s outline and holes, no opening, the bleed hole only marked', () => {
    const [flange, strongback] = [named(parts, 'flange'), named(parts, 'strongback')];
    expect(strongback.outline).toEqual(flange.outline);
    expect(strongback.holes).toEqual(flange.holes);
    expect(strongback.openings).toEqual([]);
    expect(strongback.marks).toHaveLength(1);
  });

  test('without rail holes the flange is a blank that says so', () => {
    const blank = named(
      cut(
        trough((d) => {
          d.engine.railHoles = [];
        }),
      ),
      'flange',
    );
    expect(blank.holes).toEqual([]);
    expect(blank.notes.join(' ')).toContain('transfer holes from the block');
  });
});

describe('a step', () => {
  const step = (welded: number[]): Design =>
    stepDesign((d) => {
      d.pan.joints.welded = welded;
    });
  // 3 mm 5052-H32 at 5 mm: medium, R between T and 3T, K 0.43.
  const bend = (Math.PI / 2) * (5 + 0.43 * 3);

  test('the lip, oil outside, takes off R + T; the others R', () => {
    const belly = named(cut(step([])), 'belly');
    const inside = 200 + 300 + 150 + 400 + 50;
    expectWithin(belly.flat[0], inside - 2 * (3 * 5 + 8) + 4 * bend, 1e-9, 'length');
    expect(belly.folds.map((f) => `${f.name} ${f.direction}`)).toEqual([
      'rear up',
      'step foot up',
      'lip down',
      'front up',
    ]);
    expect(belly.folds.every((f) => f.radius === 5)).toBe(true);
  });

  test('welded corners part the strip; at the lip the upright plate stops a thickness short', () => {
    const lengths = cut(step([0, 1, 2, 3]))
      .filter((p) => p.name.startsWith('belly'))
      .map((p) => p.flat[0]);
    expect(lengths).toEqual([200, 300, 147, 400, 50]);
  });
});

describe('bend allowance in a design', () => {
  test('a test bend gives back the K it was made with', () => {
    const k = 0.41;
    const flat = 100;
    // Legs over the outside: half the flat each, plus R + T less half the allowance.
    const leg = flat / 2 + 5 + 3 - (Math.PI / 4) * (5 + k * 3);
    expectWithin(kFromBendTest(flat, [leg, leg], 5, 3), k, 1e-12, 'K');
    const design = sampleDesign((d) => {
      d.pan.joints.bendTest = { flat, legs: [leg, leg] };
    });
    expectWithin(bendRule(design).allowance(1), 5 + k * 3, 1e-12, 'allowance');
  });

  test('a test bend that no sheet could give is refused with the legs that would do', () => {
    const design = sampleDesign((d) => {
      d.pan.joints.bendTest = { flat: 100, legs: [50, 50] };
    });
    expect(() => cut(design)).toThrow(PanError);
    try {
      cut(design);
    } catch (error) {
      const problem = (error as PanError).problems[0]!;
      expect(problem.code).toBe('input-range');
      expect(problem.path).toEqual(['pan', 'joints', 'bend_test']);
      expect(problem.expected).toContain('103.4 and 108.1');
    }
  });

  test('each way of reckoning is used when asked for', () => {
    const of = (allowance: 'k' | 'din' | 'handbook'): number =>
      bendRule(
        sampleDesign((d) => {
          d.pan.joints.allowance = allowance;
        }),
      ).allowance(Math.PI / 2);
    expectWithin(of('k'), (Math.PI / 2) * (5 + 0.43 * 3), 1e-12, 'k');
    expectWithin(of('handbook'), 0.64 * 3 + 1.57 * 5, 1e-12, 'handbook');
    expectWithin(of('din'), (Math.PI / 2) * (5 + ((0.65 + 0.5 * Math.log10(5 / 3)) * 3) / 2), 1e-12, 'din');
  });
});

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
