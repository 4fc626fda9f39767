import type { Design } from 'pan-core/design/index.js';
import { polylinePath } from 'pan-core/geometry/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import { cutParts, foldOrder, type Part, type SheetFinding, sheetFindings } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';
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

/** A flat part with folds, each across it from edge to edge; 1 mm of allowance for each. */
const flatPart = (
  corners: readonly (readonly [number, number])[],
  folds: readonly {
    readonly name: string;
    readonly from: readonly [number, number];
    readonly to: readonly [number, number];
    readonly direction?: 'up' | 'down';
  }[],
): Part => ({
  name: 'plate',
  what: '',
  quantity: 1,
  material: 'mild steel',
  thickness: 1,
  drawnFace: 'either',
  outline: polylinePath(corners, true),
  openings: [],
  holes: [],
  folds: folds.map((f) => ({
    angle: Math.PI / 2,
    radius: 1,
    allowance: 1,
    ...f,
    direction: f.direction ?? 'up',
  })),
  marks: [],
  notes: [],
  flat: [0, 0],
  area: 0,
  cutLength: 0,
  mass: 0,
});

/** A cross that folds to an open box: base length by width, walls of a height, corners cut out square. */
const cross = (length: number, width: number, height: number): Part => {
  const [a, b, c, d, h] = [0, length, 0, width, height];
  return flatPart(
    [
      [a - h, c],
      [a, c],
      [a, c - h],
      [b, c - h],
      [b, c],
      [b + h, c],
      [b + h, d],
      [b, d],
      [b, d + h],
      [a, d + h],
      [a, d],
      [a - h, d],
    ],
    [
      { name: 'left', from: [a, d], to: [a, c] },
      { name: 'right', from: [b, c], to: [b, d] },
      { name: 'near', from: [a, c], to: [b, c] },
      { name: 'far', from: [b, d], to: [a, d] },
    ],
  );
};

describe('folds that run several ways', () => {
  test('the last wall of a box clears the punch by (base − height)/√2 of the narrower pair', () => {
    const order = foldOrder(cross(300, 160, 60), 12.5)!;
    expect(order.order).toHaveLength(4);
    expect(order.fouls).toBeNull();
    // Plane geometry of a U of base 160 and legs 60; walls at the ends stand beside a punch as long as the fold.
    expectWithin(order.room, (160 - 60) / Math.SQRT2, 0.2, 'room');
  });

  test('a box deeper than it is wide names the wall that meets the punch, after the one that faces it', () => {
    const order = foldOrder(cross(300, 70, 120), 12.5)!;
    expect(['near', 'far']).toContain(order.fouls?.name);
    const at = order.order.findIndex((f) => f.name === order.fouls?.name);
    const facing = order.fouls?.name === 'near' ? 'far' : 'near';
    expect(order.order.findIndex((f) => f.name === facing)).toBeLessThan(at);
    expect(order.room).toBeLessThan(0);
  });

  test('a lip turned in on a wall comes before its wall, whichever way the folds are listed', () => {
    const box = cross(300, 160, 60);
    const lip = { ...box.folds[2]!, name: 'lip', from: [0, -50] as const, to: [300, -50] as const };
    for (const folds of [
      [lip, ...box.folds],
      [...box.folds, lip],
    ]) {
      const order = foldOrder({ ...box, folds }, 12.5)!;
      expect(order.fouls).toBeNull();
      const names = order.order.map((f) => f.name);
      expect(names.indexOf('lip')).toBeLessThan(names.indexOf('near'));
    }
  });

  test('a fold that ends inside the sheet parts nothing, and no order is made up', () => {
    const part = cross(300, 160, 60);
    const short = { ...part.folds[0]!, name: 'short', from: [100, 60] as const, to: [160, 100] as const };
    expect(foldOrder({ ...part, folds: [...part.folds, short] }, 12.5)).toBeNull();
  });
});

type Chain = readonly { readonly at: number; readonly up: boolean }[];

/** A strip 50 wide with square folds across it. */
const strip = (chain: Chain, length: number): Part =>
  flatPart(
    [
      [0, 0],
      [length, 0],
      [length, 50],
      [0, 50],
    ],
    chain.map(({ at, up }, i) => ({
      name: `f${i}`,
      from: [at, 0] as const,
      to: [at, 50] as const,
      direction: up ? ('up' as const) : ('down' as const),
    })),
  );

/** Whether a strip's fold meets a punch 25 thick, by turtle steps from the fold outwards on both sides. */
const meets = (chain: Chain, length: number, own: number, done: readonly number[]): boolean =>
  [0.25, 0.5, 0.75, 1].some((share) =>
    [1, -1].some((way) => {
      const lean = (share * Math.PI) / 4;
      let [x, z, heading, at, i] = [0, 0, lean, chain[own]!.at, own];
      for (;;) {
        i += way;
        const to = chain[i]?.at ?? (way === 1 ? length : 0);
        x += Math.abs(to - at) * Math.cos(heading);
        z += Math.abs(to - at) * Math.sin(heading);
        if (z > 0 && heading !== lean && x < 12.5) return true;
        if (chain[i] === undefined) return false;
        at = to;
        if (done.includes(i)) heading += chain[i]!.up === chain[own]!.up ? Math.PI / 2 : -Math.PI / 2;
      }
    }),
  );

const orders = (n: number): readonly (readonly number[])[] =>
  n === 0
    ? [[]]
    : orders(n - 1).flatMap((o) =>
        Array.from({ length: n }, (_, i) => [...o.slice(0, i), n - 1, ...o.slice(i)]),
      );

describe('many folds', () => {
  test('an order is found just where trying all of them finds one (200 random strips of five folds, seed 7)', () => {
    const next = randomFrom(7);
    const all = orders(5);
    let [free, stuck] = [0, 0];
    for (let n = 0; n < 200; n++) {
      let at = 20 + 60 * next();
      const chain = Array.from({ length: 5 }, () => {
        const here = { at, up: next() < 0.5 };
        at += 20 + 80 * next();
        return here;
      });
      const holds = (order: readonly number[]): boolean =>
        order.every((k, i) => !meets(chain, at, k, order.slice(0, i)));
      const found = foldOrder(strip(chain, at), 12.5)!;
      const named = found.order.map((f) => Number(f.name.slice(1)));
      expect(found.fouls === null, `strip ${n}`).toBe(all.some(holds));
      if (found.fouls === null) expect(holds(named), `strip ${n}`).toBe(true);
      found.fouls === null ? free++ : stuck++;
    }
    expect(Math.min(free, stuck)).toBeGreaterThan(20);
  });

  test('sixteen folds to and fro never meet the punch', () => {
    const chain = Array.from({ length: 16 }, (_, i) => ({ at: 60 * (i + 1), up: i % 2 === 0 }));
    expect(foldOrder(strip(chain, 60 * 17), 12.5)).toMatchObject({ fouls: null, complete: true });
  });

  test('sixteen folds that no order allows are given up at a bound, quickly, with the first that meets the punch', () => {
    const chain = Array.from({ length: 16 }, (_, i) => ({ at: 60 * (i + 1), up: true }));
    const found = foldOrder(strip(chain, 60 * 17), 12.5)!;
    expect(found.fouls).not.toBeNull();
    expect(found.order).toHaveLength(16);
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
    // Press-brake table: 11.5 mm over 16 and 18 mm over 25, a straight line between.
    expectWithin(f.limit, 11.5 + ((24 - 16) / (25 - 16)) * (18 - 11.5), 1e-12, 'limit');
  });

  test('a die that leaves another radius than the design reckons with is told, with the V that would do', () => {
    const ofDie = (die: number): SheetFinding | undefined =>
      found('die_radius', (d) => {
        d.shop.brake = { longest: null, die, punch: null };
      });
    // 0.167 of 40 is 6.68, 1.68 off the 5 that was given; 0.167 of 30 is 5.01.
    expectWithin(ofDie(40)?.value, 1.68, 1e-9, 'off');
    expect(ofDie(40)).toMatchObject({ status: 'warn' });
    expect(ofDie(40)?.try).toMatch(/a V of about 30 mm.*bend_radius: 6\.7/);
    expect(ofDie(30)?.status).toBe('pass');
    expect(found('die_radius', () => {})).toBeUndefined();
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
