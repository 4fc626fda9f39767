import type { Design } from 'pan-core/design/index.js';
import { pathBox, pathLength } from 'pan-core/geometry/index.js';
import { buildPan, floorProfile, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Mark, type Part } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { stepDesign } from '../sample-design.js';

const whole = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};
const named = (parts: readonly Part[], name: string): Part => {
  const found = parts.find((p) => p.name === name);
  if (found === undefined) throw new Error(`No part ${name} among ${parts.map((p) => p.name).join(', ')}`);
  return found;
};

// 3 mm 5052-H32 bent at 5 mm: K 0.43. A right angle takes 2·5 off the inside lengths (2·8 at the lip).
const BEND = (Math.PI / 2) * (5 + 0.43 * 3);
/** Where the sump's floor begins in the blank: 200 of rear wall, less R, plus the bend; and x there. */
const floorAt = (x: number): number => 200 - 5 + BEND + (x - 5);

describe('a belly of changing width', () => {
  const rows: [number, number][] = [
    [0, 80],
    [100, 100],
    [500, 100],
    [700, 60],
  ];
  const design = stepDesign((d) => {
    d.pan.joints.welded = [];
    d.pan.left = rows;
    d.pan.right = [
      [0, 90],
      [700, 90],
    ];
    d.pickup.at = [150, 0];
  });

  test('its edge turns at the stations and is straight between, chords across the bends', () => {
    const belly = named(whole(design), 'belly');
    const w = (x: number): number => (x < 100 ? 80 + x / 5 : x < 500 ? 100 : 100 - (x - 500) / 5);
    const pieces: [length: number, a: number, b: number][] = [
      [195, 80, 80],
      [BEND, 80, w(5)],
      [95, w(5), 100],
      [195, 100, 100],
      [BEND, 100, 100],
      [150 - 5 - 8, 100, 100],
      [BEND, 100, 100],
      [500 - 308, 100, 100],
      [195, 100, w(695)],
      [BEND, w(695), w(700)],
      [45, w(700), w(700)],
    ];
    const area = pieces.reduce((sum, [length, a, b]) => sum + length * ((a + b) / 2 + 90), 0);
    expectWithin(belly.area, area, 1e-7, 'area');
    // At both ends' bends the true edge leaves its chord; the note tells by how much.
    expect(belly.notes.join(' ')).toMatch(/true edge leaves them by up to 0\.\d\d mm/);
  });
});

describe('what is cut or marked stands where the pan says', () => {
  const design = stepDesign((d) => {
    d.pan.joints.welded = [];
    d.pickup.at = [150, 20];
    d.pickup.mouth = 50;
    d.drain = { at: [60, -30], thread: { diameter: 18, pitch: 1.5 }, bung: 28, plugBelow: 12 };
    d.bungs = [
      { name: 'return', purpose: 'return', at: [400, 100, -25], toward: [0, 1, 0], diameter: 24 },
      { name: 'level', purpose: 'level', at: [220, 10, -200], toward: [0, 0, -1], diameter: 20 },
      { name: 'nowhere', purpose: 'other', at: [220, 10, -120], toward: [0, 0, -1], diameter: 20 },
    ];
    d.baffles = [
      {
        kind: 'lid',
        name: 'lid',
        down: 90,
        rear: 100,
        front: 300,
        span: null,
        fixed: 'bolted',
        thickness: 3,
        holes: [{ at: [220, 40], size: 12 }],
      },
      {
        kind: 'wall',
        name: 'wall',
        run: 'across',
        at: 240,
        span: null,
        topDown: 90,
        weep: 4,
        fixed: 'welded',
        thickness: 3,
        doors: [],
        holes: [],
      },
    ];
  });
  const parts = whole(design);
  const belly = named(parts, 'belly');

  test('drain and level bung in the floor, the return in the left side, one on no plate in none', () => {
    const at = belly.holes.map((h) => [h.diameter, ...h.at]);
    expect(at).toHaveLength(2);
    const drain = belly.holes.find((h) => h.diameter === 28)!;
    expectWithin(drain.at[0], floorAt(60), 1e-9, 'drain along');
    expectWithin(drain.at[1], 100 - 30, 1e-9, 'drain across');
    const level = belly.holes.find((h) => h.diameter === 20)!;
    expectWithin(level.at[0], floorAt(220), 1e-9, 'level along');
    expectWithin(level.at[1], 110, 1e-9, 'level across');
    const left = named(parts, 'side left').holes;
    expect(left).toHaveLength(1);
    expectWithin(left[0]!.at[0], 400, 1e-9, 'return along');
    expectWithin(left[0]!.at[1], 200 - 25, 1e-9, 'return up');
    expect(named(parts, 'side right').holes).toEqual([]);
  });

  const marksOf = (part: Part, what: string): readonly Mark[] => part.marks.filter((m) => m.what === what);

  test('the mouth’s circle, the wall’s foot and the lid’s edges', () => {
    const mouth = belly.marks.find((m) => m.what.startsWith('pickup mouth'))!;
    const { min, max } = pathBox(mouth.path);
    expectWithin((min[0] + max[0]) / 2, floorAt(150), 1e-9, 'mouth along');
    expectWithin((min[1] + max[1]) / 2, 120, 1e-9, 'mouth across');
    expectWithin(max[0] - min[0], 50, 1e-9, 'mouth');
    const foot = marksOf(belly, 'wall, rear face');
    expect(foot).toHaveLength(1);
    expectWithin(foot[0]!.path[0]!.from[0], floorAt(240), 1e-9, 'foot');
    expectWithin(pathLength(foot[0]!.path), 200, 1e-9, 'foot, from side to side');
    const left = named(parts, 'side left');
    const lid = marksOf(left, 'lid, underside');
    expect(lid).toHaveLength(1);
    expectWithin(lid[0]!.path[0]!.from[1], 200 - 90, 1e-9, 'lid up');
    expectWithin(pathLength(lid[0]!.path), 200, 1e-9, 'lid, from its rear edge to the step');
    expectWithin(pathLength(marksOf(left, 'wall, rear face')[0]!.path), 200 - 90 - 4, 1e-9, 'upright');
  });

  test('the lid’s own hole, half a millimetre in from its edges', () => {
    const lid = named(parts, 'lid');
    expect(lid.holes.map((h) => h.diameter)).toEqual([12]);
    expectWithin(lid.holes[0]!.at[0], 220 - 100 - 0.5, 1e-9, 'along');
    expectWithin(lid.holes[0]!.at[1], 140 - 0.5, 1e-9, 'across');
  });
});

describe('a wing over a floor that bends', () => {
  const wing = {
    name: 'pocket',
    side: 'right' as const,
    rear: 60,
    front: 240,
    topDown: { rear: 100, front: 100 },
    topFall: 0,
    beyondWall: { rear: 50, front: 50 },
  };
  const design = (rear: number): Design =>
    stepDesign((d) => {
      d.pan.floor = [
        [700, 50],
        [300, 50],
        [300, 200],
        [150, 200],
        [0, 160],
      ];
      d.pan.joints.welded = [];
      d.pan.wings = [{ ...wing, rear }];
      d.pickup.at = [220, 0];
    });
  const turn = Math.atan2(40, 150);
  const allowance = turn * (5 + 0.43 * 3);

  test('comes as a folded floor and a wall with its top, the wall’s foot true to the floor', () => {
    const parts = whole(design(60));
    const floor = named(parts, 'pocket floor');
    const sloped = (150 - 60) / Math.cos(turn);
    const flat = sloped + 90 - 2 * Math.tan(turn / 2) * 5 + allowance;
    expectWithin(floor.flat[0], flat, 1e-9, 'floor along');
    expectWithin(floor.flat[1], 50, 1e-9, 'floor across');
    expect(floor.folds.map((f) => f.direction)).toEqual(['up']);
    const wall = named(parts, 'pocket wall and top');
    const foot = wall.outline.filter((s) => s.kind === 'arc');
    expect(foot).toHaveLength(1);
    expectWithin(foot[0]!.kind === 'arc' ? foot[0]!.radius : 0, 5, 1e-12, 'foot');
    expectWithin(wall.flat[0], 180, 1e-9, 'wall along');
    expectWithin(wall.flat[1], 100 + 47 - 2 * 5 + BEND, 1e-9, 'wall and top');
  });

  test('one that ends inside the bend takes only its share of the arc', () => {
    // The bend runs from x 150 − t·cos(turn) to 150 + t with t = tan(turn/2)·5; 150 lies in it.
    const parts = whole(design(150));
    const floor = named(parts, 'pocket floor');
    const tangent = Math.tan(turn / 2) * 5;
    // The arc is tangent to the level floor at 150 + t; x 150 is t back: sin of the turn there is t/5.
    const share = Math.asin(tangent / 5) / turn;
    expectWithin(floor.flat[0], 90 - tangent + allowance * share, 1e-9, 'floor along');
    expect(floorProfile(design(150)).corners).toHaveLength(5);
  });
});

describe('parts are drawn as seen from the oil', () => {
  const both = stepDesign((d) => {
    d.pan.joints.welded = [];
    d.pan.wings = (['left', 'right'] as const).map((side) => ({
      name: `${side} wing`,
      side,
      rear: 50,
      front: 250,
      topDown: { rear: 100, front: 100 },
      topFall: 0,
      beyondWall: { rear: 60, front: 60 },
    }));
  });
  const parts = whole(both);
  /** Mean place along the blank of a part's arcs, from 0 at its left edge to 1 at its right. */
  const arcsAt = (name: string): number => {
    const part = named(parts, name);
    const arcs = part.outline.filter((s) => s.kind === 'arc');
    return arcs.reduce((sum, s) => sum + s.from[0] + s.to[0], 0) / (2 * arcs.length * part.flat[0]);
  };

  test('caps: the rounded corners are the outer ones', () => {
    // From the oil a rear cap is seen looking rearward: the car's left is at the right hand.
    expect(arcsAt('left wing rear cap')).toBeGreaterThan(0.8);
    expect(arcsAt('right wing rear cap')).toBeLessThan(0.2);
    expect(arcsAt('left wing front cap')).toBeLessThan(0.2);
    expect(arcsAt('right wing front cap')).toBeGreaterThan(0.8);
  });

  test('sides: the deep sump is at the rear, left on the left plate’s drawing, right on the right one’s', () => {
    const deep = (name: string): number => {
      const part = named(parts, name);
      const low = part.outline.filter((s) => s.from[1] < 1 && s.to[1] < 1);
      return low.reduce((sum, s) => sum + s.from[0] + s.to[0], 0) / (2 * low.length * part.flat[0]);
    };
    expect(deep('side left')).toBeLessThan(0.5);
    expect(deep('side right')).toBeGreaterThan(0.5);
  });
});
