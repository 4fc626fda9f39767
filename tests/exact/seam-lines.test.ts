import type { Design } from 'pan-core/design/index.js';
import type { Vec3 } from 'pan-core/numeric/index.js';
import { buildPan, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts } from 'pan-core/sheet/index.js';
import { panSeams, panSkin, type Seam } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomPan } from '../random-design.js';
import { sampleDesign, stepDesign } from '../sample-design.js';

const seamsOf = (design: Design): readonly Seam[] => {
  const model = buildPan(design);
  return panSeams(model, panSkin(model), cutParts(design, model.profile, platesOf(model), panelsOf(model)));
};

const lengthOf = (line: readonly Vec3[]): number =>
  line.slice(1).reduce((sum, p, i) => sum + Math.hypot(...p.map((v, k) => v - line[i]![k]!)), 0);

const rootsOf = (seam: Seam): number => seam.lines.reduce((sum, { root }) => sum + lengthOf(root), 0);

/** Round ones are drawn as chords, up to 0.05 mm inside the arc. */
const isRound = ({ joint, name }: Seam): boolean => joint === 'ring' || / end plate to pan/.test(name);

const seal = (d: Parameters<NonNullable<Parameters<typeof stepDesign>[0]>>[0]): void => {
  d.pan.flange.endSeals = [
    { end: 'rear', radius: 60, centreAboveRail: 20, across: 0, land: 12, groove: null },
    { end: 'front', radius: 50, centreAboveRail: 20, across: 5, land: 12, groove: null },
  ];
};

describe('lines of seams', () => {
  it.each([
    ['sample', sampleDesign()],
    ['step', stepDesign()],
    ['end plates', stepDesign(seal)],
    [
      'flange in two',
      stepDesign((d) => {
        d.pan.flange.split = { way: 'across', at: 340, joint: 'scarf' };
      }),
    ],
    [
      'pieces',
      sampleDesign((d) => {
        d.shop.sheet = [500, 300];
      }),
    ],
  ])('%s: add up to the length of each seam', (_, design) => {
    const seams = seamsOf(design);
    expect(seams.filter((seam) => seam.lines.length === 0)).toEqual([]);
    for (const seam of seams)
      if (isRound(seam)) {
        // A chord with sagitta s on radius r is short of its arc by the share s/3r: 0.05 mm on 14 mm and more.
        expect(rootsOf(seam), seam.name).toBeLessThan(seam.length);
        expect(rootsOf(seam), seam.name).toBeGreaterThan(0.998 * seam.length);
      } else expectWithin(rootsOf(seam), seam.length, 1e-9 * seam.length, seam.name);
  });

  it('add up in random pans, point by point from root to face', () => {
    for (let seed = 1; seed <= 60; seed++)
      for (const seam of panSeams(randomPan(seed))) {
        if (!isRound(seam))
          expectWithin(rootsOf(seam), seam.length, 1e-9 * seam.length, `seed ${seed}, ${seam.name}`);
        for (const { root, face } of seam.lines) expect(face.length, seam.name).toBe(root.length);
      }
  });

  // The sharp step in 3 mm sheet: sump 300 × 200 deep, shallow 400 × 50, width 200, flange 10 mm.
  it.each([
    [
      'belly 2 of 5 to side left',
      'root',
      [
        [0, 100, -200],
        [300, 100, -200],
      ],
    ],
    [
      'belly 2 of 5 to side left',
      'face',
      [
        [-3, 103, -203],
        [303, 103, -203],
      ],
    ],
    [
      'belly 3 of 5 to belly 4 of 5',
      'root',
      [
        [300, -100, -50],
        [300, 100, -50],
      ],
    ],
    [
      'belly 3 of 5 to belly 4 of 5',
      'face',
      [
        [303, -103, -53],
        [303, 103, -53],
      ],
    ],
  ] as const)('%s, %s runs from corner to corner', (name, which, ends) => {
    const seam = seamsOf(stepDesign()).find((s) => s.name === name);
    expect(seam?.lines.length).toBe(1);
    const line = seam!.lines[0]![which];
    const found = [line[0]!, line[line.length - 1]!].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    for (const [i, p] of found.entries())
      for (const [k, v] of p.entries()) expectWithin(v, ends[i]![k]!, 1e-9, `${name} ${i} ${k}`);
  });

  it('the fillet under the flange runs round the outside at its underside, the edge run at the rail', () => {
    for (const [name, z] of [
      ['flange to pan, below', -10],
      ['flange to pan, at the rail face', 0],
    ] as const) {
      const seam = seamsOf(stepDesign()).find((s) => s.name === name)!;
      for (const { face } of seam.lines)
        for (const [x, y, at] of face) {
          expectWithin(at, z, 1e-9, `${name}, z`);
          expectWithin(
            Math.max(Math.abs(y) - 103, Math.abs(x - 350) - 353),
            0,
            1e-9,
            `${name}, on the outside`,
          );
        }
    }
  });

  it('the drain’s ring lies on the outside of the floor round its place', () => {
    const design = sampleDesign();
    const ring = seamsOf(design).find((s) => s.name === 'drain bung to the pan')!;
    const { at, bung } = design.drain!;
    const face = ring.lines[0]!.face;
    const mean = [0, 1].map((k) => face.slice(1).reduce((sum, p) => sum + p[k]!, 0) / (face.length - 1));
    // The floor falls 7 mm in 288: its normal leans by that, and the outside lies 3 mm along it.
    const lean = Math.atan(7 / 288);
    expectWithin(mean[0]!, at[0] + 3 * Math.sin(lean), 1e-9, 'x');
    expectWithin(mean[1]!, at[1], 1e-9, 'y');
    for (const p of face)
      expectWithin(
        Math.hypot(
          p[0] - mean[0]!,
          p[1] - at[1],
          p[2] - face.slice(1).reduce((s, q) => s + q[2], 0) / (face.length - 1),
        ),
        bung / 2,
        1e-9,
        'radius',
      );
  });
});
