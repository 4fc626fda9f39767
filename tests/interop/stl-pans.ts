import type { Design, Lid } from 'pan-core/design/index.js';
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
  [
    'lid with slots on tabs, tray with louvres on studs',
    sampleDesign((d) => {
      d.baffles[0] = {
        ...(d.baffles[0] as Mutable<Lid>),
        down: 70,
        tabs: { eachSide: 2, size: 6 },
        slots: [{ along: 'rear', count: 3, size: [40, 6], inset: 8 }],
      };
      d.baffles.push({
        kind: 'lid',
        tray: true,
        name: 'tray',
        down: 36,
        rear: 60,
        front: 600,
        span: [-80, 50],
        fixed: 'bolted',
        thickness: 2,
        holes: [],
        louvres: { rows: 3, count: 5, size: [70, 14], bend: 0.5, opens: 'left' },
        studs: { size: 8, at: [[168, 20]] },
      });
    }),
  ],
  [
    'flange in two pieces, round at one end, relieved and dowelled',
    sampleDesign((d) => {
      d.pan.flange.lighten = { land: 18 };
      d.pan.flange.groove = { width: 4, depth: 2 };
      d.pan.flange.dowels = [
        { at: [45, 112], size: 8, fit: 'close' },
        { at: [645, 112], size: 8, fit: 'easy' },
      ];
      d.pan.flange.drillAfterWeld = [[45, 112]];
      d.pan.flange.split = { way: 'across', at: 345, joint: 'scarf' };
      d.pan.flange.endSeals = [
        {
          end: 'front',
          radius: 75,
          centreAboveRail: 62,
          across: 0,
          land: 12,
          groove: { width: 4, depth: 4 },
        },
      ];
      d.engine.railHoles = d.engine.railHoles.filter(({ at }) => at[0] < 600 || Math.abs(at[1]) > 80);
    }),
  ],
];
