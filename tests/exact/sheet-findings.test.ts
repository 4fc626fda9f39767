import type { Design } from 'pan-core/design/index.js';
import { circlePath, polylinePath, reversePath } from 'pan-core/geometry/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import {
  bendsOf,
  cutParts,
  type Part,
  type SheetFinding,
  sheetFindings,
  shopFindings,
} from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign } from '../sample-design.js';

const findings = (change?: (d: Mutable<Design>) => void): readonly SheetFinding[] => {
  const design = sampleDesign(change);
  const profile = floorProfile(design);
  return sheetFindings(design, profile, cutParts(design, profile, [], []));
};

const finding = (id: string, change?: (d: Mutable<Design>) => void): SheetFinding => {
  const found = findings(change).find((f) => f.id === id);
  if (found === undefined) throw new Error(`No finding ${id}`);
  return found;
};

describe('what the sheet says about a design', () => {
  test('nothing fails in the sample, and nothing is left unsaid', () => {
    const all = findings();
    expect(all.filter((f) => f.status === 'fail')).toEqual([]);
    expect(new Set(all.map((f) => f.id)).size).toBe(all.length);
    for (const f of all) {
      expect(f.because, f.id).not.toBe('');
      expect(f.try !== '' || f.status !== 'fail', f.id).toBe(true);
    }
  });

  test('a tight radius fails with the radius that would do', () => {
    const f = finding('bend_radius', (d) => {
      d.pan.sheet.bendRadius = 2;
    });
    expect(f.status).toBe('fail');
    // 3 mm lies between 0.090 and 0.125 in, and the row of the next thickness up says 0.188 in.
    expectWithin(f.limit ?? 0, 0.188 * 25.4, 1e-9, 'limit');
    expect(f.try).toContain('4.8 mm');
  });

  test('the design’s own limit goes first', () => {
    const f = finding('bend_radius', (d) => {
      d.pan.sheet.bendRadius = 2;
      d.limits = { bend_radius: 1.5 };
    });
    expect(f.status).toBe('pass');
    expect(f.limit).toBe(1.5);
  });

  test('a material that is in no table is said, not guessed', () => {
    const change = (d: Mutable<Design>): void => {
      d.pan.sheet.material = 'bronze';
    };
    expect(finding('bend_radius', change).status).toBe('warn');
    expect(finding('bend_table', change).status).toBe('warn');
  });

  test('a structural pan is refused as a replacement, with the reason', () => {
    const f = finding('structural', (d) => {
      d.pan.structural = true;
    });
    expect(f.status).toBe('fail');
    expect(f.because).toContain('gearbox');
  });

  test('a front wall too low to fold fails by how much it is too low', () => {
    const f = finding('shortest_flange', (d) => {
      d.pan.floor = [
        [655, 9],
        [320, 58],
        [320, 165],
        [32, 172],
      ];
      d.pan.wings = [];
    });
    expect(f.status).toBe('fail');
    // Over the outside the wall stands its inside height and, at the sharp outer corner, T·tan(θ/2) more.
    const angle = Math.PI / 2 - Math.atan2(58 - 9, 335);
    expectWithin(f.value ?? 0, 9 + 3 * Math.tan(angle / 2), 1e-9, 'leg');
    expectWithin(f.limit ?? 0, 14, 1e-12, 'limit');
  });

  test('a drain close to a bend warns with the distance to go', () => {
    const f = finding('hole_to_bend', (d) => {
      d.drain = { at: [55, 0], thread: { diameter: 18, pitch: 1.5 }, bung: 28, plugBelow: 12 };
    });
    expect(f.status).toBe('warn');
    const angle = Math.PI / 2 + Math.atan2(7, 288);
    const along = (55 - 32) / Math.cos(Math.atan2(7, 288));
    expectWithin(f.value ?? 0, along - Math.tan(angle / 2) * 5 - 14 + 5, 1e-9, 'to the tangent line and R');
  });

  test('a hole too near the flange’s edge, a thin land and wide bolts', () => {
    const near = finding('hole_edge', (d) => {
      d.engine.railHoles = [{ at: [300, 119], thread: 8 }];
    });
    expect(near.status).toBe('fail');
    expectWithin(near.value ?? 0, 6, 1e-12, 'edge');
    expectWithin(near.limit ?? 0, 1.2 * 9, 1e-12, 'limit');
    const land = finding('sealing_land', (d) => {
      d.engine.railHoles = [{ at: [300, 105], thread: 8 }];
    });
    expect(land.status).toBe('fail');
    expectWithin(land.value ?? 0, 105 - 95 - 3.2 - 4.5, 1e-9, 'land');
    const pitch = finding('bolt_pitch', (d) => {
      d.engine.railHoles = d.engine.railHoles.filter((h) => h.at[0] !== 15 + 660 * (5 / 11) || h.at[1] < 0);
    });
    expect(pitch.status).toBe('warn');
    expectWithin(pitch.value ?? 0, 120, 1e-9, 'pitch');
  });

  test('a pan wider than its flange fails by the missing metal', () => {
    const f = finding('flange_rim', (d) => {
      d.pan.right = [
        [32, 130],
        [655, 130],
      ];
      d.pan.wings = [];
    });
    expect(f.status).toBe('fail');
    expect(f.value ?? 0).toBeLessThanOrEqual(0);
  });

  test('no holes: a warning that says how to get them', () => {
    const f = finding('rail_holes', (d) => {
      d.engine.railHoles = [];
    });
    expect(f.status).toBe('warn');
    expect(f.try).toContain('Transfer holes from the block');
  });

  test('a wing that ends in a bend, and a notch that ends in one', () => {
    const wing = finding('wing_end', (d) => {
      d.pan.wings[0]!.rear = 34;
    });
    expect(wing.status).toBe('warn');
    expect(wing.value ?? 0).toBeLessThan(0);
    const notch = finding('cut_in_bend', (d) => {
      d.pan.notches = [{ kind: 'box', name: 'post', min: [318, -20, -300], max: [360, 20, -163] }];
    });
    expect(notch.status).toBe('warn');
    expect(finding('cut_in_bend').status).toBe('pass');
  });
});

describe('what a cutter would refuse', () => {
  const good: Part = cutParts(sampleDesign(), floorProfile(sampleDesign()), [], []).find(
    (p) => p.name === 'flange',
  )!;
  const ids = (change: Partial<Part>): readonly string[] =>
    shopFindings({ ...good, ...change }).map((f) => f.id);
  const square = polylinePath(
    [
      [0, 0],
      [700, 0],
      [700, 300],
      [0, 300],
    ],
    true,
  );

  test('the flange as cut has no fault; its holes are smaller than it is thick', () => {
    expect(shopFindings(good).filter((f) => f.severity === 'fault')).toEqual([]);
    expect(ids({})).toEqual(['small-hole']);
    expect(ids({ thickness: 8 })).toEqual([]);
  });

  test('an open loop, a clockwise one, a doubled line, a bow tie, a number that is none', () => {
    expect(ids({ outline: square.slice(0, 3) })).toContain('open');
    expect(ids({ outline: reversePath(square) })).toContain('direction');
    expect(ids({ openings: [circlePath([300, 100], 20)] })).toContain('direction');
    expect(ids({ outline: [...square, ...square] })).toContain('duplicate');
    const bow = polylinePath(
      [
        [0, 0],
        [700, 300],
        [700, 0],
        [0, 400],
      ],
      true,
    );
    expect(ids({ outline: bow })).toContain('crossing');
    expect(ids({ holes: [{ at: [Number.NaN, 0], diameter: 9, what: '' }] })).toEqual(['number']);
    expect(ids({ outline: [{ kind: 'line', from: [0, 0], to: [0, 0] }, ...square] })).toContain('empty');
  });

  test('a hole in the edge, one outside, one over another, and two too close', () => {
    const hole = (x: number, y: number): Part['holes'][number] => ({ at: [x, y], diameter: 10, what: '' });
    expect(ids({ holes: [hole(300, 2)] })).toContain('crossing');
    expect(ids({ holes: [hole(300, -20)] })).toContain('outside');
    expect(ids({ holes: [hole(20, 20), hole(26, 20)] })).toContain('crossing');
    expect(ids({ holes: [hole(18, 20), hole(18, 34)] })).toContain('narrow-gap');
    expect(ids({ holes: [hole(18, 20), hole(18, 36)] })).toEqual([]);
    expect(ids({ flat: [700, 19], holes: [] })).toEqual(['sliver']);
  });
});

test('bends are listed in degrees with their way', () => {
  const belly = cutParts(sampleDesign(), floorProfile(sampleDesign()), [], []).find(
    (p) => p.name === 'belly',
  )!;
  const bends = bendsOf(belly);
  expect(bends.map((b) => b.direction)).toEqual(['up', 'up', 'down', 'up']);
  expectWithin(bends[0]!.angle_deg, 90 + (Math.atan2(7, 288) * 180) / Math.PI, 1e-12, 'rear');
  expect(bends[0]!.radius_mm).toBe(5);
});
