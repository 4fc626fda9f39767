import type { Design } from 'pan-core/design/index.js';
import {
  attitudeOf,
  createBody,
  createMeasure,
  createOilSystem,
  createOriented,
  heightOf,
  measureCells,
  type OilAnswer,
  orient,
  rampAnswer,
} from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, test } from 'vitest';
import { stepDesign } from '../sample-design.js';
import { expectPublished, row, rowsUnder, title } from './rows.js';

/** A box of that length, width and depth below the rail, mm, closed as far above it; no tilt, no body roll. */
const tank = (length: number, width: number, depth: number): Design =>
  stepDesign((design) => {
    const half = width / 2;
    design.engine.rail.outline = [
      [-25, -half - 25],
      [length + 25, -half - 25],
      [length + 25, half + 25],
      [-25, half + 25],
    ];
    design.engine.railHoles = [];
    design.engine.crankcaseTop = depth;
    design.pan.floor = [
      [length, depth],
      [0, depth],
    ];
    for (const side of ['left', 'right'] as const) {
      design.pan[side] = [
        [0, half],
        [length, half],
      ];
    }
    design.pan.joints.welded = [0, 1];
    design.pan.sumpFrom = length / 2;
    design.pickup.at = [length / 2, 0];
    design.pickup.mouth = Math.min(20, width / 3);
  });

const inputs = (id: string): Record<string, number> => row(id).inputs as Record<string, number>;
const braking = (g: number): { forward: number; left: number; grade: number } => ({
  forward: -g,
  left: 0,
  grade: 0,
});

/** Height of the surface above the rail at x, on the centre line, mm. */
const surfaceAt = ({ up, pools }: OilAnswer, x: number): number => (pools[0]!.level - up[0] * x) / up[2];

const brake = (design: Design, depth: number, g: number): OilAnswer => {
  const [[length, deep]] = design.pan.floor as unknown as [[number, number]];
  const width = 2 * design.pan.left[0]![1];
  const system = createOilSystem(buildPan(design));
  return rampAnswer(system, length * width * (deep - (deep - depth)), braking(g), 'held');
};

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const slopeOf = ({ up }: { readonly up: readonly number[] }): number => -up[0]! / up[2]!;

describe('surface of an accelerating liquid', () => {
  test.each(rowsUnder('liquid.angle').map(({ id }) => [title(id), id]))('%s', (_, id) => {
    const load = braking(inputs(id).acceleration_g!);
    expectPublished(id, degrees(Math.atan(slopeOf(attitudeOf(tank(100, 100, 100), load)))));
  });

  test(title('liquid.fish-tank.slope'), () => {
    const { acceleration_m_s2: a, gravity_m_s2: g } = inputs('liquid.fish-tank.slope');
    expectPublished('liquid.fish-tank.slope', slopeOf(attitudeOf(tank(100, 100, 100), braking(a! / g!))));
  });

  test.each([
    ['liquid.fish-tank.rise-lengthwise', 'length_m', 'width_m'],
    ['liquid.fish-tank.rise-crosswise', 'width_m', 'length_m'],
  ] as const)('%s', (id, along, across) => {
    const told = inputs(id);
    const length = told[along]! * 1000;
    // Deep enough that the floor stays covered and the top is not reached.
    const answer = brake(
      tank(length, told[across]! * 1000, 1000),
      500,
      told.acceleration_m_s2! / told.gravity_m_s2!,
    );
    expectPublished(id, (surfaceAt(answer, length) + 500) / 10);
  });

  test.each(['liquid.fuel-tank.slope', 'liquid.fuel-tank.acceleration'])('%s', (id) => {
    const told = inputs(id);
    const length = told.length_m! * 1000;
    const design = tank(length, 500, told.tank_depth_m! * 1000);
    // The acceleration at which the surface meets the rim, by halving.
    let [low, high] = [0, 2];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (surfaceAt(brake(design, told.fuel_depth_m! * 1000, middle), length) < 0) low = middle;
      else high = middle;
    }
    expectPublished(id, id.endsWith('slope') ? high : high * told.gravity_m_s2!);
  });

  test.each(['liquid.mug.angle', 'liquid.mug.rise'])('%s', (id) => {
    const told = inputs(id);
    const across = told.diameter_mm!;
    // Along the middle a mug is a box as long as its diameter.
    const answer = brake(
      tank(across, across, told.depth_mm!),
      40,
      told.acceleration_m_s2! / told.gravity_m_s2!,
    );
    const rise = surfaceAt(answer, across) - surfaceAt(answer, across / 2);
    expectPublished(id, id.endsWith('angle') ? degrees(Math.atan(slopeOf(answer))) : rise / 10);
  });

  test.each([
    ['liquid.open-tank.left', 9.80665],
    ['liquid.open-tank.left-standard-gravity', 9.80665],
    ['liquid.open-tank.left-round-gravity', 9.81],
  ])('%s', (id, gravity) => {
    const told = inputs(id);
    const [length, height] = [told.length_m! * 1000, told.height_m! * 1000];
    const model = buildPan(tank(length, told.width_m! * 1000, height));
    const up = attitudeOf(model.design, braking(told.acceleration_m_s2! / gravity)).up;
    const oriented = orient(createOriented(createBody(model)), up);
    const below = model.cells.flatMap((cell, i) => (cell.zone === 'crankcase' ? [] : [i]));
    // What lies under the plane through the rim at the end that the water runs to.
    const left = measureCells(oriented, below, heightOf(oriented, [length, 0, 0]), createMeasure()).volume;
    expectPublished(id, left / 1e9);
  });
});
