import type { Design, Wing } from 'pan-core/design/index.js';
import { floorProfile, halfWidthAt, wingPlanes } from 'pan-core/pan/index.js';
import { cutParts, type Fold, type Part } from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';
import { sampleDesign } from '../sample-design.js';

const SEED = Number(process.env.PAN_SEED ?? 2203);

type P2 = readonly [number, number];
type P3 = readonly [number, number, number];

/** A left wing over a sloping floor, everything about it at random. */
const wingDesign = (seed: number): Design => {
  const r = randomFrom(seed);
  const between = (a: number, b: number): number => a + (b - a) * r();
  return sampleDesign((d) => {
    d.pan.sheet.bendRadius = between(3, 8);
    d.pan.sheet.thickness = between(1.5, 4);
    d.pan.floor = [
      [655, 40],
      [320, 58],
      [320, between(150, 190)],
      [32, between(150, 190)],
    ];
    d.pan.left = [
      [32, between(70, 100)],
      [655, between(70, 100)],
    ];
    d.baffles = [];
    d.pan.wings = [
      {
        name: 'wing',
        side: 'left',
        rear: between(60, 100),
        front: between(200, 290),
        topDown: { rear: between(70, 110), front: between(70, 110) },
        topFall: between(-0.1, 0.2),
        beyondWall: { rear: between(40, 80), front: between(40, 80) },
      },
    ];
  });
};

/** Folds a point of a leaf up about its fold, into space, with the outer wall left in the plane of the blank. */
const foldUp = (fold: Fold, leaf: 1 | -1, [x, y]: P2): P3 => {
  const d: P2 = [fold.to[0] - fold.from[0], fold.to[1] - fold.from[1]];
  const length = Math.hypot(...d);
  const along: P2 = [d[0] / length, d[1] / length];
  // Away from the outer wall: below the foot's fold, above the top's.
  const out: P2 = [-along[1] * leaf, along[0] * leaf];
  const [rx, ry] = [x - fold.from[0], y - fold.from[1]];
  const s = rx * along[0] + ry * along[1];
  const beyond = rx * out[0] + ry * out[1] - fold.allowance / 2;
  const { angle, radius } = fold;
  const across = -fold.allowance / 2 + radius * Math.sin(angle) + beyond * Math.cos(angle);
  const up = radius * (1 - Math.cos(angle)) + beyond * Math.sin(angle);
  return [fold.from[0] + s * along[0] + across * out[0], fold.from[1] + s * along[1] + across * out[1], up];
};

const far = (a: P3, b: P3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Corner i of the strip's outline: 1, 2 floor at the pan's wall; 7, 8 top, front and rear. */
const corner = (part: Part, i: number): P2 => part.outline[i]!.from;

test(`a refolded wing's edges stand as far apart as the pan's (seed ${SEED})`, () => {
  for (let seed = SEED; seed < SEED + 100; seed++) {
    const design = wingDesign(seed);
    const wing = design.pan.wings[0] as Wing;
    const parts = cutParts(design, floorProfile(design), [], []);
    const strip = parts.find((p) => p.name === 'wing strip')!;
    expect(strip.outline, `seed ${seed}`).toHaveLength(12);
    const [foot, top] = [
      strip.folds.find((f) => f.name === 'foot')!,
      strip.folds.find((f) => f.name === 'top edge')!,
    ];
    const folded = {
      floorRear: foldUp(foot, -1, corner(strip, 1)),
      floorFront: foldUp(foot, -1, corner(strip, 2)),
      topFront: foldUp(top, 1, corner(strip, 7)),
      topRear: foldUp(top, 1, corner(strip, 8)),
    };
    const wall = (x: number): number => halfWidthAt(design.pan.left, x);
    const [a, b] = [design.pan.floor[3]!, design.pan.floor[2]!];
    const floorAt = (x: number): P3 => [x, wall(x), -(a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]))];
    const { floorRear, floorFront, topFront, topRear } = folded;
    const [rear, front] = [floorAt(wing.rear), floorAt(wing.front)];
    expectWithin(far(floorRear, floorFront), far(rear, front), 1e-9, `seed ${seed} floor edge`);
    // The top stands clear of the side plate: its inside edge a thickness out, and more where it leans in.
    const { top: depth } = wingPlanes(design, wing);
    const run: P2 = [front[0] - rear[0], front[1] - rear[1]];
    const out: P2 = [-run[1] / Math.hypot(...run), run[0] / Math.hypot(...run)];
    const [byX, byY] = [depth(1, 0) - depth(0, 0), depth(0, 1) - depth(0, 0)];
    // The top's upward normal is (byX, byY, 1); against the wall's outward normal it gives the angle between.
    const cosine = -(byX * out[0] + byY * out[1]) / Math.hypot(byX, byY, 1);
    const away = design.pan.sheet.thickness * (1 + Math.max(0, cosine));
    const topAt = (x: number): P3 => {
      const y = wall(x) + away / out[1];
      return [x, y, -depth(x, y)];
    };
    const [tr, tf] = [topAt(wing.rear), topAt(wing.front)];
    expectWithin(far(topRear, topFront), far(tr, tf), 1e-9, `seed ${seed} top edge`);
    expectWithin(far(floorRear, topRear), far(rear, tr), 1e-9, `seed ${seed} rear end`);
    expectWithin(far(floorFront, topFront), far(front, tf), 1e-9, `seed ${seed} front end`);
    expectWithin(far(floorRear, topFront), far(rear, tf), 1e-9, `seed ${seed} diagonal`);
    expectWithin(far(floorFront, topRear), far(front, tr), 1e-9, `seed ${seed} other diagonal`);
  }
});
