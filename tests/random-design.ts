import type { Baffle, Design, Notch, Wing } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { buildPan, type PanModel } from 'pan-core/pan/index.js';
import { randomFrom } from './random.js';
import { sampleDesign } from './sample-design.js';

/** A random pan that a shop could make: step, widths, wings, notch, lids, walls and doors come and go. */
export const randomDesign = (seed: number): Design => {
  const r = randomFrom(seed);
  const between = (a: number, b: number): number => a + (b - a) * r();
  const chance = (p: number): boolean => r() < p;
  const length = between(450, 750);
  const rear = between(10, 60);
  const front = length - between(10, 60);
  const step = rear + (front - rear) * between(0.3, 0.7);
  const run = chance(0.5) ? 0 : between(10, 60);
  const [d0, d1] = [between(25, 60), between(45, 75)];
  const [d2, d3] = [between(130, 200), between(130, 210)];
  const [w0, w1] = [between(70, 110), between(70, 110)];
  const varied = chance(0.4);
  const wings: Wing[] = (['left', 'right'] as const).flatMap((side): Wing[] =>
    chance(0.4)
      ? [
          {
            name: `${side} wing`,
            side,
            rear: rear + between(8, 20),
            front: step - run - between(20, 60),
            topDown: { rear: between(80, 100), front: between(80, 100) },
            topFall: chance(0.3) ? between(0, 0.15) : 0,
            beyondWall: { rear: between(30, 70), front: between(30, 70) },
          },
        ]
      : [],
  );
  const baffles: Baffle[] = [];
  const lid = between(78, 100);
  if (chance(0.6))
    baffles.push({
      kind: 'lid',
      name: 'lid',
      down: lid,
      rear: rear + between(40, 80),
      front: chance(0.5) ? step - run : step - run - between(5, 30),
      span: chance(0.7) ? null : [-between(30, 60), between(30, 60)],
      fixed: 'bolted',
      thickness: 0,
      holes: chance(0.3) ? [{ at: [step - run - 60, 0], size: 14 }] : [],
    });
  if (chance(0.6))
    baffles.push({
      kind: 'wall',
      name: 'wall',
      run: 'across',
      at: between(rear + 100, step - run - 40),
      span: null,
      topDown: between(70, 100),
      weep: chance(0.5) ? between(3, 6) : 0,
      fixed: 'welded',
      thickness: 0,
      doors: chance(0.7)
        ? [{ size: [40, 25], at: between(-25, 25), up: 8, letsOil: chance(0.5) ? 'rearward' : 'forward' }]
        : [],
      holes: [],
    });
  if (chance(0.3))
    baffles.push({
      kind: 'wall',
      name: 'long wall',
      run: 'along',
      at: between(45, 60),
      span: [rear + 5, step - run - 10],
      topDown: between(75, 110),
      weep: 4,
      fixed: 'welded',
      thickness: 0,
      doors: [],
      holes: [],
    });
  const notches: Notch[] = chance(0.25)
    ? [
        {
          kind: 'box',
          name: 'notch',
          min: [step + 30, between(20, 50), -100],
          max: [step + 80, 200, -between(10, 20)],
        },
      ]
    : [];
  return sampleDesign((d) => {
    d.title = `random pan, seed ${seed}`;
    d.engine.rail.outline = [
      [0, -150],
      [length, -150],
      [length, 150],
      [0, 150],
    ];
    d.engine.rail.land = 5;
    d.engine.crankcaseDisplaced = chance(0.5) ? 0 : 0.35;
    d.engine.tilt = { noseUp: between(-0.08, 0.08), leanLeft: between(-0.1, 0.1) };
    d.pan.sheet.bendRadius = between(3, 8);
    d.pan.floor = [
      [front, d0],
      [step, d1],
      [step - run, d2],
      [rear, d3],
    ];
    d.pan.left = varied
      ? [
          [rear, w0],
          [step, w1],
          [front, w0],
        ]
      : [
          [rear, w0],
          [front, w0],
        ];
    d.pan.right = varied
      ? [
          [rear, w1],
          [front, w0],
        ]
      : [
          [rear, w0],
          [front, w0],
        ];
    d.pan.joints.welded = chance(0.3) ? [0, 1, 2, 3] : [];
    d.pan.wings = wings as typeof d.pan.wings;
    d.pan.notches = notches as typeof d.pan.notches;
    d.baffles = baffles as typeof d.baffles;
    d.pickup.at = [rear + between(40, 60), 0];
    d.pickup.mouth = 40;
    d.pickup.route = [];
    d.drain = null;
  });
};

/** The first pan from this seed on that can be built; a random shape may be one that is rightly refused. */
export const randomPan = (seed: number): PanModel => {
  for (let s = seed; ; s += 1_000_003) {
    try {
      return buildPan(randomDesign(s));
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
};
