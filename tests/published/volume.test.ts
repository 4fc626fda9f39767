import { type ConvexCell, cellVolume } from 'pan-core/geometry/index.js';
import {
  createBody,
  createMeasure,
  createOilSystem,
  createOriented,
  heightOf,
  measureCells,
  orient,
  rampAnswer,
} from 'pan-core/oil/index.js';
import { buildPan, type PanModel, type Room } from 'pan-core/pan/index.js';
import { describe, test } from 'vitest';
import { stepDesign } from '../sample-design.js';
import { expectPublished, row, rowsUnder, title } from './rows.js';

type Point = readonly [number, number, number];

/** A solid between two loops of as many points, lower and upper, both counter-clockwise from above. */
const between = (lower: readonly Point[], upper: readonly Point[]): ConvexCell<null> => {
  const face = (loop: readonly Point[]) => ({ plane: 0, side: 1 as const, tag: null, loop });
  const sides = lower.map((a, i) => {
    const j = (i + 1) % lower.length;
    return face([a, lower[j]!, upper[j]!, upper[i]!]);
  });
  return { faces: [face([...lower].reverse()), face(upper), ...sides] };
};

const square = (side: number, z: number): Point[] => [
  [-side / 2, -side / 2, z],
  [side / 2, -side / 2, z],
  [side / 2, side / 2, z],
  [-side / 2, side / 2, z],
];

const MANY = 20_000;
/** How much less area than its circle the polygon has, as a part: 2π²/3n². */
const LESS = 2e-8;
/** A circle as a polygon in it. */
const circle = (radius: number, place: (u: number, v: number) => Point, count = MANY): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return place(radius * Math.cos(angle), radius * Math.sin(angle));
  });

/** Volume of a cell below the plane through `at` square to `up`. */
const below = (cell: ConvexCell<null>, up: Point, at: Point): number => {
  const model: Pick<PanModel, 'cells' | 'shares' | 'volumes'> = {
    cells: [cell as unknown as Room],
    shares: [1],
    volumes: [cellVolume(cell)],
  };
  const oriented = orient(createOriented(createBody(model)), up);
  return measureCells(oriented, [0], heightOf(oriented, at), createMeasure()).volume;
};

/** A cylinder lying along y, its lowest line at z = 0. */
const lying = (radius: number, length: number, count = MANY): ConvexCell<null> => {
  const end = (y: number): Point[] => circle(radius, (u, v) => [u, y, v + radius], count);
  return between(end(length), end(0));
};

describe('volumes', () => {
  test(title('volume.frustum'), () => {
    expectPublished('volume.frustum', cellVolume(between(square(1, 0), square(2, 3))));
  });

  test(title('volume.prismatoid'), () => {
    // A solid whose section area is not straight in height tells the middle section's share.
    const [lower, upper] = [square(1, 0), square(5, 6)];
    const [first, last, middle] = [1, 25, 9];
    const share = (cellVolume(between(lower, upper)) / 6 - (first + last) / 6) / middle;
    expectPublished('volume.prismatoid', share);
  });

  test(title('volume.hoof'), () => {
    const { radius_mm: r, height_mm: h } = row('volume.hoof').inputs as Record<string, number>;
    const end = (z: number): Point[] => circle(r!, (u, v) => [u, v, z]);
    const size = Math.hypot(r!, h!);
    const up: Point = [-h! / size, 0, r! / size];
    // Below a plane through a diameter of the base: half the cylinder has none, the other the hoof.
    const volume = below(between(end(0), end(h!)), up, [0, 0, 0]);
    expectPublished('volume.hoof', volume, LESS * 50_000 * 3);
  });

  test.each(rowsUnder('volume.circle-segment').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const { radius, depth } = row(id).inputs as Record<string, number>;
    expectPublished(id, below(lying(radius!, 1), [0, 0, 1], [0, 0, depth!]), LESS);
  });

  test(title('volume.lying-cylinder.volume'), () => {
    const { length, ullage } = row('volume.lying-cylinder.volume').inputs as Record<string, number>;
    const radius = row('volume.lying-cylinder.radius').value as number;
    const filled = below(lying(radius, length!), [0, 0, 1], [0, 0, 2 * radius - ullage!]);
    expectPublished('volume.lying-cylinder.volume', filled);
  });

  test(title('volume.lying-cylinder.radius'), () => {
    const {
      length,
      surface_width: width,
      ullage,
    } = row('volume.lying-cylinder.radius').inputs as Record<string, number>;
    // The radius at which the free surface is as wide as told, by halving; the surface narrows as the radius falls.
    let [low, high] = [0.55, 1.2];
    for (let i = 0; i < 20; i++) {
      const radius = (low + high) / 2;
      const cell = lying(radius, length!, 1000);
      const at = (z: number): number => below(cell, [0, 0, 1], [0, 0, 2 * radius - ullage! + z]);
      if ((at(1e-4) - at(-1e-4)) / 2e-4 / length! < width!) low = radius;
      else high = radius;
    }
    expectPublished('volume.lying-cylinder.radius', high);
  });
});

describe('L-shaped sump', () => {
  const held = (model: PanModel, litres: number): number | undefined =>
    rampAnswer(createOilSystem(model), litres * 1e6, { forward: -1, left: 0, grade: 0 }, 'held').pools.find(
      (pool) => pool.hasPickup,
    )?.volume;

  test(title('volume.l-sump.kept'), () => {
    expectPublished('volume.l-sump.kept', (held(buildPan(stepDesign()), 6) ?? Number.NaN) / 1e6);
  });

  test(title('volume.l-sump.kept-under-lid'), () => {
    const design = stepDesign((d) => {
      d.engine.crankcaseTop = 350;
      d.baffles = [
        {
          kind: 'lid',
          name: 'lid',
          down: 50,
          rear: 100,
          front: 300,
          span: null,
          fixed: 'bolted',
          thickness: 0,
          holes: [],
        },
      ];
    });
    expectPublished('volume.l-sump.kept-under-lid', (held(buildPan(design), 12) ?? Number.NaN) / 1e6);
  });

  test(title('volume.formed-lip.drop'), () => {
    const design = stepDesign((d) => {
      d.pan.joints.welded = [0, 2, 3];
      d.pan.sheet.bendRadius = 5;
      d.pan.sheet.thickness = 3;
    });
    const load = { forward: -1, left: 0, grade: 0 };
    const answer = rampAnswer(createOilSystem(buildPan(design)), 6e6, load, 'held');
    const level = answer.pools.find((pool) => pool.hasPickup)?.level ?? Number.NaN;
    const [ux, , uz] = answer.up;
    // The sharp lip lies at x 300, 50 below the rail; the arc is chords within 0.05 mm of it, square to it.
    const drop = -50 - (level - ux * 300) / uz;
    expectPublished('volume.formed-lip.drop', drop, 0.05 / uz);
  });
});
