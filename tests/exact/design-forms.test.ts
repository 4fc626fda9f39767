import { describe, expect, it } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';
import { expectWithin } from '../numbers.js';

const demo = exampleText('demo');
const deg = Math.PI / 180;

describe('the same design in other words', () => {
  it('in inches by unit: every number in mm written with its unit', async () => {
    const inches = changed(
      demo.replace('{length: 690, width: 250,', '{length: 690 mm, width: 9 27/32 in,'),
      'mouth: 60',
      'mouth: 2 1/2 in',
    );
    const { design } = await read(inches);
    expect(design.engine.rail.outline[1]).toEqual([690, -((9 * 32 + 27) * 254) / 320 / 2]);
    expect(design.pickup.mouth).toBe(63.5);
  });

  it('half-width lists in any order', async () => {
    const text = changed(
      demo,
      'width_inside: 190',
      'left: [[600, 80], [32, 95], [320, 90]]\n  right: [[0, 95]]',
    );
    const { design } = await read(text);
    expect(design.pan.left).toEqual([
      [32, 95],
      [320, 90],
      [600, 80],
    ]);
    expect(design.pan.right).toEqual([[0, 95]]);
  });

  it('wings with ends of their own and a falling top', async () => {
    const text = changed(
      demo,
      'top_down: 95, beyond_wall: 60',
      'top_down: {rear: 100, front: 95}, top_fall: 3 deg, beyond_wall: {rear: 40, front: 60}',
    );
    const wing = (await read(text)).design.pan.wings[0];
    expect(wing?.topDown).toEqual({ rear: 100, front: 95 });
    expect(wing?.beyondWall).toEqual({ rear: 40, front: 60 });
    expectWithin(wing?.topFall, 3 * deg, 1e-16);
  });

  it('two wings on one side get two names', async () => {
    const text = changed(
      demo,
      'wings: [{',
      'wings: [{side: right, rear: 310, front: 318, top_down: 95, beyond_wall: 10}, {',
    );
    expect((await read(text)).design.pan.wings.map(({ name }) => name)).toEqual([
      'right wing',
      'right wing 2',
    ]);
  });

  it('notches as box and wedge', async () => {
    const text = changed(
      demo,
      'notches: []',
      'notches: [{name: a, box: [[300, 95, -20], [200, 60, -60]]}, {name: b, wedge: {triangle: [[0, 0], [10, 0], [0, -10]], along: y, from: -20, to: 20}}]',
    );
    expect((await read(text)).design.pan.notches).toEqual([
      { kind: 'box', name: 'a', min: [200, 60, -60], max: [300, 95, -20] },
      {
        kind: 'wedge',
        name: 'b',
        triangle: [
          [0, 0],
          [10, 0],
          [0, -10],
        ],
        along: 'y',
        from: -20,
        to: 20,
      },
    ]);
  });

  it('welded corners by their floor points, and a test bend', async () => {
    const text = changed(
      demo,
      'joints: {}',
      'joints: {welded: [[32, 172], [320, 58]], bend_test: {flat: 100, legs: [52, 53]}, allowance: din}',
    );
    expect((await read(text)).design.pan.joints).toEqual({
      welded: [1, 3],
      fold: [],
      split: { usual: true, whole: [], seams: [] },
      weld: [],
      bendTest: { flat: 100, legs: [52, 53] },
      allowance: 'din',
    });
  });

  it('seams of parts cut apart, parts that stay whole, and none at all', async () => {
    const split = async (text: string) =>
      (await read(changed(demo, 'joints: {}', `joints: {split: ${text}}`))).design.pan.joints.split;
    expect(
      await split('[{part: belly, across_at: 41 cm, name: mid}, {part: side left, never: yes}]'),
    ).toEqual({
      usual: true,
      whole: ['side left'],
      seams: [{ part: 'belly', way: 'across', at: 410, name: 'mid' }],
    });
    expect(await split('never')).toEqual({ usual: false, whole: [], seams: [] });
    await expect(split('[{part: belly}]')).rejects.toThrow(/across_at, lengthwise_at, never/);
  });

  it('walls along, with holes, slots and a span', async () => {
    const text = changed(
      demo,
      'baffles:\n',
      'baffles:\n  - {name: rib, along_at: 20, span: [100, 200], top_down: 90, doors: [{x: 150, size: [30, 20], up: 5, lets_oil: left}], holes: [{at: [120, 120], diameter: 8}, {at: [180, 120], size: [20, 6]}]}\n',
    );
    expect((await read(text)).design.baffles[0]).toMatchObject({
      kind: 'wall',
      run: 'along',
      at: 20,
      span: [100, 200],
      topDown: 90,
      doors: [{ at: 150, letsOil: 'left', up: 5 }],
      holes: [
        { at: [120, 120], size: 8 },
        { at: [180, 120], size: [20, 6] },
      ],
    });
  });

  it('planes by facing and by normal', async () => {
    const planes = [
      'facing: up',
      'facing: front',
      'facing: rear',
      'facing: left',
      'facing: right',
      'normal: [0, 3, 4]',
    ];
    const list = planes.map((p, i) => `    - {name: p${i}, plane: {at: [0, 0, 0], ${p}}}\n`).join('');
    const { design } = await read(changed(demo, '  obstacles:\n', `  obstacles:\n${list}`));
    const normals = design.chassis.obstacles
      .slice(0, 6)
      .map(({ shape }) => (shape.kind === 'plane' ? shape.normal : null));
    expect(normals.slice(0, 5)).toEqual([
      [0, 0, 1],
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
      [0, -1, 0],
    ]);
    expectWithin(normals[5]?.[1], 0.6, 1e-15);
    expectWithin(normals[5]?.[2], 0.8, 1e-15);
  });

  it('loads by angle, grade in per cent, and a path', async () => {
    const text = changed(
      demo,
      'manoeuvres:\n',
      'manoeuvres:\n  - {name: path, braking: 45 deg, grade: 10 %, for: 1 min, via: [{braking: 0.5, left_turn: 0.5}, {accelerating: 4.903325 m/s2}]}\n',
    );
    const path = (await read(text)).design.manoeuvres[0];
    expectWithin(path?.forward, -1, 2e-16);
    expectWithin(path?.grade, Math.atan(0.1), 1e-16);
    expect(path?.seconds).toBe(60);
    expect(path?.via).toEqual([
      { forward: -0.5, left: 0.5, grade: 0 },
      { forward: 0.5, left: 0, grade: 0 },
    ]);
  });

  it('usual cases by their name', async () => {
    const text = demo.replace(
      /manoeuvres:[\s\S]*$/,
      'manoeuvres: [{preset: track}, {name: hill, grade: 20 %}]\n',
    );
    const { design } = await read(text);
    // From memory: track on sticky tyres 1.4 g turning, 1.2 braking, 0.5 accelerating, 8 s.
    expect(
      design.manoeuvres.map(({ forward, left, seconds }) => [forward, left, seconds]).slice(0, 4),
    ).toEqual([
      [-1.2, 0, 8],
      [0, 1.4, 8],
      [0, -1.4, 8],
      [0.5, 0, 8],
    ]);
    expect(design.manoeuvres.at(-1)?.name).toBe('hill');
  });

  it('limits by check id, in the unit the check prints', async () => {
    const text = changed(
      demo,
      'limits: {}',
      'limits: {ground: 4 in, mouth_depth: 25, trapped_air: 2 US qt, draw: 3 s}',
    );
    const { limits } = (await read(text)).design;
    expectWithin(limits.ground, 101.6, 1e-13);
    expect(limits.mouth_depth).toBe(25);
    expectWithin(limits.trapped_air, 1.892705892, 1e-15);
    expectWithin(limits.draw, 3, 1e-15);
  });

  it('units beyond the common ones', async () => {
    const { design } = await read(changed(demo, 'top_above_rail: 600', 'top_above_rail: 0.5 yd'));
    expectWithin(design.engine.topAboveRail, 457.2, 1e-12);
  });
});
