import type { Design } from 'pan-core/design/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import { cutParts, foldOrder, type Part, type SheetFinding, sheetFindings } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign, stepDesign } from '../sample-design.js';

/** A trough 2 mm thick bent at 3 mm: its belly is a U. */
const trough = (length: number, depth: number): Part => {
  const design = stepDesign((d) => {
    d.pan.sheet = { material: 'mild steel', thickness: 2, bendRadius: 3 };
    d.pan.floor = [
      [length, depth],
      [0, depth],
    ];
    d.pan.joints.welded = [];
  });
  return cutParts(design, floorProfile(design), [], []).find((p) => p.name === 'belly')!;
};

const found = (id: string, change: (d: Mutable<Design>) => void): SheetFinding | undefined => {
  const design = sampleDesign(change);
  const profile = floorProfile(design);
  return sheetFindings(design, profile, cutParts(design, profile, [], [])).find((f) => f.id === id);
};

describe('the order of folds', () => {
  test('the second leg of a U clears the punch by (base − leg)/√2, both between fold lines', () => {
    const part = trough(200, 60);
    const [a, b] = [part.folds[0]!.from[0], part.folds[1]!.from[0]];
    const order = foldOrder(part, 12.5)!;
    expectWithin(order.room, (b - a - a) / Math.SQRT2, 1e-9, 'room');
    expect(order.fouls).toBeNull();
    expect(order.order).toHaveLength(2);
  });

  test('a U deeper than its base is wide is folded once and stops at the second fold, which is named', () => {
    const part = trough(70, 120);
    const order = foldOrder(part, 12.5)!;
    expect(order.fouls).toBe(order.order[1]);
    expect(order.room).toBeLessThan(0);
  });
});

describe('what brake and sheet allow', () => {
  test('a fold longer than the brake, of a part that may not be cut apart, fails with both lengths', () => {
    const f = found('longest_fold', (d) => {
      d.pan.joints.split = { usual: false, whole: [], seams: [] };
      d.shop.brake = { longest: 150, die: null, punch: null };
    })!;
    expect(f.status).toBe('fail');
    expect(f.limit).toBe(150);
    expect(f.value).toBeGreaterThan(150);
    expect(found('longest_fold', () => {})).toBeUndefined();
  });

  test('the shortest leg goes by the die once it is told', () => {
    const f = found('shortest_flange', (d) => {
      d.shop.brake = { longest: null, die: 24, punch: null };
    })!;
    expectWithin(f.limit, 0.77 * 24, 1e-12, 'limit');
  });

  test('a part larger than the sheet fails where none may be cut apart, and says so', () => {
    const f = found('part_on_sheet', (d) => {
      d.pan.joints.split = { usual: false, whole: [], seams: [] };
      d.shop.sheet = [800, 400];
    })!;
    expect(f.status).toBe('fail');
    expect(f.try).toMatch(/pan\.joints\.split.*larger sheet/);
    expect(found('part_on_sheet', () => {})!.status).toBe('pass');
  });

  test('a flange longer than its plate is told to be made of two, and then a strongback asks for no longer one', () => {
    const short = (d: Parameters<Parameters<typeof found>[1]>[0]): void => {
      d.pan.floor = [
        [400, 40],
        [200, 60],
      ];
      d.pan.wings = [];
      d.shop.sheet = [640, 400];
    };
    const whole = found('part_on_sheet', short)!;
    expect(whole.status).toBe('fail');
    const place = Number(/across_at: (\d+)/.exec(whole.try)?.[1]);
    const two = found('part_on_sheet', (d) => {
      short(d);
      d.pan.flange.split = { way: 'across', at: place, joint: 'butt' };
    })!;
    expect(two.status).toBe('pass');
  });
});
