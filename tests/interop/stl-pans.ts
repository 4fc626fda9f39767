import type { Design } from 'pan-core/design/index.js';
import { type Mutable, sampleDesign, stepDesign } from '../sample-design.js';

/** Pans that between them have every kind of face: formed lips, wings, notches, tapers, welded corners. */
export const pans: readonly (readonly [string, Design])[] = [
  ['sample', sampleDesign()],
  [
    'sharp step',
    stepDesign((d) => {
      d.engine.railHoles = d.engine.railHoles.filter((hole) => Math.abs(hole.at[1]) > 100);
    }),
  ],
  [
    'tapered, sloping wing, notches',
    sampleDesign((d) => {
      d.pan.left = [
        [32, 70],
        [200, 88],
        [400, 80],
        [655, 95],
      ];
      d.pan.right = [
        [32, 95],
        [500, 95],
        [655, 60],
      ];
      d.pan.wings = [
        {
          name: 'left',
          side: 'left',
          rear: 210,
          front: 310,
          topDown: { rear: 80, front: 90 },
          topFall: 0.1,
          beyondWall: { rear: 40, front: 70 },
        },
      ];
      d.pan.notches = [
        { kind: 'box', name: 'rack', min: [400, -20, -80], max: [440, 30, -40] },
        {
          kind: 'wedge',
          name: 'bar',
          triangle: [
            [250, -175],
            [330, -175],
            [330, -140],
          ],
          along: 'y',
          from: -300,
          to: 300,
        },
      ];
      d.baffles = [];
    }),
  ],
];

/** Numbers between 0 and 1 from a seed: mulberry32, public domain, after Tommy Ettinger. */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

/** A pan with random depths, widths, wings and perhaps a notch, without baffles. */
export const randomPan = (seed: number): Design => {
  const next = seeded(seed);
  const between = (a: number, b: number): number => a + (b - a) * next();
  return sampleDesign((d: Mutable<Design>) => {
    const step = between(250, 400);
    const deep = between(140, 190);
    d.pan.floor = [
      [655, between(35, 55)],
      [step + between(0, 60), between(56, 75)],
      [step, deep],
      [32, deep + between(-10, 15)],
    ];
    d.pan.left = [
      [32, between(70, 95)],
      [between(100, 300), between(75, 98)],
      [655, between(70, 98)],
    ];
    d.pan.right = [
      [32, between(70, 95)],
      [655, between(70, 98)],
    ];
    d.pan.wings = [
      {
        name: 'right',
        side: 'right',
        rear: between(40, 80),
        front: between(180, step - 10),
        topDown: { rear: between(70, 110), front: between(70, 110) },
        topFall: 0,
        beyondWall: { rear: between(20, 70), front: between(20, 70) },
      },
    ];
    const x = between(420, 560);
    d.pan.notches =
      next() < 0.5
        ? []
        : [
            {
              kind: 'box',
              name: 'notch',
              min: [x, between(-60, -10), -90],
              max: [x + 40, between(0, 60), -between(28, 33)],
            },
          ];
    d.baffles = [];
    d.drain = null;
  });
};
