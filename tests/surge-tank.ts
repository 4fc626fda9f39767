import { createOilSystem, type OilSystem } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { stepDesign } from './sample-design.js';

/** A box x 0 to `length`, `width` wide and `depth` deep, its crankcase as wide; mm. */
export interface Tank {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
}

/** An upper tank over a lower one: a lid at `lid` down with a round hole of `area` mm² in it, at x 100. */
export const drainTank = ({ length, width, depth }: Tank, lid: number, area: number): OilSystem =>
  createOilSystem(
    buildPan(
      stepDesign((d) => {
        box(d, { length, width, depth });
        d.baffles = [
          {
            kind: 'lid',
            name: 'lid',
            down: lid,
            rear: 0,
            front: length,
            span: null,
            fixed: 'welded',
            thickness: 0,
            holes: [{ at: [100, 0], size: Math.sqrt((4 * area) / Math.PI) }],
          },
        ];
      }),
    ),
  );

/** Two tanks side by side: a wall at x = `at` up to the rail with a round hole near its foot. */
export const twoTanks = ({ length, width, depth }: Tank, at: number, hole: number): OilSystem =>
  createOilSystem(
    buildPan(
      stepDesign((d) => {
        box(d, { length, width, depth });
        d.baffles = [
          {
            kind: 'wall',
            name: 'wall',
            run: 'across',
            at,
            span: null,
            topDown: 0,
            weep: 0,
            fixed: 'welded',
            thickness: 0,
            doors: [],
            holes: [{ at: [0, depth - 200], size: hole }],
          },
        ];
      }),
    ),
  );

type Draft = Parameters<NonNullable<Parameters<typeof stepDesign>[0]>>[0];

const box = (d: Draft, { length, width, depth }: Tank): void => {
  const half = width / 2;
  d.engine.rail.outline = [
    [-25, -half - 25],
    [length + 25, -half - 25],
    [length + 25, half + 25],
    [-25, half + 25],
  ];
  d.pan.floor = [
    [length, depth],
    [0, depth],
  ];
  d.pan.left = [
    [0, half],
    [length, half],
  ];
  d.pan.right = d.pan.left;
  d.pan.joints.welded = [0, 1];
  d.pickup.at = [length / 2, 0];
};
