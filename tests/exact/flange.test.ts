import type { EndSeal } from 'pan-core/design/index.js';
import { type Path, pathGap, pathLength } from 'pan-core/geometry/index.js';
import { endSealSizes, outerSolids } from 'pan-core/pan/index.js';
import { cutParts, flangeHoles, flangeJoints, flangePieces, shopFindings } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import {
  area,
  box,
  type Change,
  FRONT,
  finding,
  made,
  own,
  part,
  REAR,
  STRIP,
  WHOLE,
} from '../flange-trial.js';
import { expectWithin } from '../numbers.js';

describe('a flange in two pieces', () => {
  for (const joint of ['butt', 'scarf'] as const)
    for (const [way, at] of [
      ['across', 345],
      ['lengthwise', 20],
    ] as const)
      test(`${joint} ${way}: together as large as the whole, all holes, nothing lost to the joint`, () => {
        const { design, profile, parts } = made((d) => {
          d.pan.flange.split = { way, at, joint };
        });
        const halves = way === 'across' ? ['flange rear', 'flange front'] : ['flange right', 'flange left'];
        expect(flangePieces(design, profile).map((p) => p.name)).toEqual(halves);
        expectWithin(
          area(flangePieces(design, profile)) / area(flangePieces(WHOLE.design, WHOLE.profile)),
          1,
          1e-12,
          'area',
        );
        const holes = halves.flatMap((name) => part(parts, name).holes);
        expect(holes).toHaveLength(WHOLE.design.engine.railHoles.length);
        // Each strip once: a butt as long as the strip is wide, a scarf at 45 degrees √2 times that.
        const strips = way === 'across' ? 2 * STRIP : FRONT - REAR - (655 - 32) - 6.4;
        expectWithin(
          pathLength(flangeJoints(design, profile)),
          joint === 'butt' ? strips : Math.SQRT2 * strips,
          1e-9,
          'joint',
        );
        // What both halves have more of edge than the whole is the joint, twice.
        const edge = (pieces: ReturnType<typeof flangePieces>): number =>
          pieces.reduce(
            (sum, p) => sum + [p.outline, ...p.openings].reduce((s, q) => s + pathLength(q), 0),
            0,
          );
        expectWithin(
          edge(flangePieces(design, profile)),
          edge(flangePieces(WHOLE.design, WHOLE.profile)) + 2 * pathLength(flangeJoints(design, profile)),
          1e-8,
          'edges',
        );
        for (const name of halves)
          expect(shopFindings(part(parts, name)).filter((f) => f.severity === 'fault')).toEqual([]);
      });

  test('a joint under a bolt or at a corner fails by its distance', () => {
    const [x] = WHOLE.design.engine.railHoles[3]!.at;
    const under = finding('joint_hole', (d) => {
      d.pan.flange.split = { way: 'across', at: x + 2, joint: 'butt' };
    });
    expect(under.status).toBe('fail');
    expectWithin(under.value ?? 0, 2 - 4.5, 1e-9, 'to the hole’s edge');
    const corner = finding('joint_corner', (d) => {
      d.pan.flange.split = { way: 'across', at: 32 + 4, joint: 'butt' };
    });
    expect(corner.status).toBe('fail');
    // The opening's straight begins at x 32, where its rounded corner ends.
    expectWithin(corner.value ?? 0, 4, 1e-9, 'to the corner');
    expect(
      finding('flange_joint', (d) => {
        d.pan.flange.split = { way: 'across', at: 5000, joint: 'butt' };
      }).status,
    ).toBe('fail');
  });
});

describe('a round end', () => {
  const seal: EndSeal = {
    end: 'front',
    radius: 75,
    centreAboveRail: 62,
    across: 0,
    land: 12,
    groove: { width: 5, depth: 4 },
  };
  /** Segment of a circle of radius r beyond a chord c from its centre: r² acos(c/r) − c √(r² − c²). */
  const segment = (r: number, c: number): number => r * r * Math.acos(c / r) - c * Math.sqrt(r * r - c * c);

  test('the end plate is the metal between two circles under the rail', () => {
    const plate = part(made(own({ endSeals: [seal] })).parts, 'front end plate');
    expectWithin(plate.area, segment(87, 62) - segment(75, 62), 1e-9, 'area');
    const half = Math.sqrt(87 ** 2 - 62 ** 2);
    expectWithin(plate.flat[0], 2 * half, 1e-9, 'width');
    expectWithin(plate.flat[1], 87 - 62, 1e-9, 'depth');
    expectWithin(
      plate.cutLength,
      174 * Math.acos(62 / 87) + 150 * Math.acos(62 / 75) + 2 * (half - Math.sqrt(75 ** 2 - 62 ** 2)),
      1e-9,
      'cut',
    );
    expectWithin(pathLength(plate.marks[0]!.path), 158 * Math.acos(62 / 79), 1e-9, 'groove bottom');
    expect(plate.outline).toHaveLength(4);
    expect(shopFindings(plate).filter((f) => f.severity === 'fault')).toEqual([]);
  });

  test('the belly’s end walls carry the line that they are trimmed to, an arc at each end of the blank', () => {
    const { design, profile } = made(own({ endSeals: [seal, { ...seal, end: 'rear', across: 7 }] }));
    const belly = part(cutParts(design, profile, [], []), 'belly');
    const lines = belly.marks.filter((m) => m.what.startsWith('trim'));
    expect(lines).toHaveLength(2);
    const sag = 75 - 62;
    const half = Math.sqrt(75 ** 2 - 62 ** 2);
    const boxes = lines.map((m) => box(m.path)).sort((a, b) => a[0]! - b[0]!);
    // The blank begins at its right edge, 95 from the crank's line.
    const wanted = [
      [0, 95 + 7 - half, sag, 95 + 7 + half],
      [belly.flat[0] - sag, 95 - half, belly.flat[0], 95 + half],
    ];
    boxes.forEach((found, i) => {
      found.forEach((value, k) => {
        expectWithin(value, wanted[i]![k]!, 1e-9, `arc ${i}`);
      });
    });
  });

  test('the pan’s outside has it as a box: on the end wall, as thick as the flange, down to its foot', () => {
    const { design, profile } = made(own({ endSeals: [{ ...seal, across: 7 }] }));
    const solids = outerSolids(design, profile).filter((s) => s.name === 'end plate');
    const points = solids.flatMap((s) => s.vertices);
    const half = Math.sqrt(87 ** 2 - 62 ** 2);
    const wanted = [
      [655 + 3, 655 + 3 + 10],
      [7 - half, 7 + half],
      [62 - 87, 0],
    ] as const;
    wanted.forEach(([low, high], k) => {
      expectWithin(Math.min(...points.map((p) => p[k]!)), low, 1e-9, `axis ${k}`);
      expectWithin(Math.max(...points.map((p) => p[k]!)), high, 1e-9, `axis ${k}`);
    });
  });

  test('a centre on the rail makes it half a ring', () => {
    const plate = part(
      made(own({ endSeals: [{ ...seal, centreAboveRail: 0, radius: 20, land: 8 }] })).parts,
      'front end plate',
    );
    expectWithin(plate.area, (Math.PI / 2) * (28 ** 2 - 20 ** 2), 1e-9, 'area');
  });

  test('the flange is open as wide as the plate, and the whole strip deep; two make two plates', () => {
    const whole = area(flangePieces(WHOLE.design, WHOLE.profile));
    const one = made(own({ endSeals: [seal] }));
    const { half } = endSealSizes(seal);
    const front = FRONT - 655 - 3.2;
    expectWithin(
      area(flangePieces(one.design, one.profile)),
      whole - 2 * half * front,
      1e-7,
      'less its room at the front',
    );
    const two = made(own({ endSeals: [seal, { ...seal, end: 'rear' }] }));
    expect(two.parts.map((p) => p.name)).toEqual([
      'flange right',
      'flange left',
      'front end plate',
      'rear end plate',
      'strongback',
    ]);
    expectWithin(
      area(flangePieces(two.design, two.profile)),
      whole - 2 * half * (front + 32 - 3.2 - REAR),
      1e-7,
      'less both',
    );
  });

  test('a joint lengthwise through the round crosses the other end only', () => {
    const { design, profile } = made((d) => {
      d.pan.flange.endSeals = [seal];
      d.pan.flange.split = { way: 'lengthwise', at: 40, joint: 'butt' };
    });
    expectWithin(pathLength(flangeJoints(design, profile)), 32 - 3.2 - REAR, 1e-9, 'rear strip');
    expect(flangePieces(design, profile).map((p) => p.name)).toEqual(['flange right', 'flange left']);
  });

  test('a bolt that the round takes away fails; so does a plate lower than the wall', () => {
    const change: Change = (d) => {
      d.pan.flange.endSeals = [seal];
      d.engine.railHoles = [...d.engine.railHoles, { at: [FRONT - 11, 0], thread: 8 }];
    };
    expect(finding('hole_edge', change).status).toBe('fail');
    const deep = finding('end_seal_foot', (d) => {
      d.pan.flange.endSeals = [{ ...seal, radius: 95, land: 14 }];
    });
    expect(deep.status).toBe('fail');
    // Wall 40 deep; it turns by 90 − atan(18/335) degrees at R 5 + … inside, so the bend begins R·tan(θ/2) above.
    const turn = Math.PI / 2 - Math.atan2(58 - 40, 335);
    expectWithin(deep.value ?? 0, 40 - 5 * Math.tan(turn / 2) - (109 - 62), 1e-9, 'wall left');
    expect(finding('end_seal_groove', own({ endSeals: [seal] })).value).toBe(2.5);
    const side = finding('end_seal_side', own({ endSeals: [{ ...seal, across: 40 }] }));
    expectWithin(side.value ?? 0, 95 - 40 - Math.sqrt(87 ** 2 - 62 ** 2), 1e-9, 'side');
  });
});

describe('what seals it', () => {
  const bead = (change?: Change) => {
    const { design, parts } = made(change);
    const flange = part(parts, 'flange');
    const holes = flangeHoles(design);
    const least = Math.min(...holes.map(({ at }) => Math.abs(at[1]) - 95 - 3.2 - 4.5).filter((v) => v > 0));
    return { flange, least };
  };

  test('a groove is two lines as far apart as it is wide, about the middle of the narrowest land', () => {
    const { flange } = bead(own({ groove: { width: 4, depth: 2 } }));
    const [inner, outer] = flange.marks.map((m) => m.path) as [Path, Path];
    const opening = flange.openings[0]!;
    expectWithin(pathGap(inner, outer), 4, 1e-9, 'width');
    // Holes at y 114 leave 114 − 95 − 3.2 − 4.5 mm, the narrowest in the sample.
    const land = 114 - 95 - 3.2 - 4.5;
    expectWithin(pathGap(inner, opening), (land - 4) / 2, 1e-9, 'inner wall');
    const room = finding('groove_land', own({ groove: { width: 4, depth: 2 } }));
    expectWithin(room.value ?? 0, (land - 4) / 2, 1e-9, 'wall');
    expect(finding('groove_floor', own({ groove: { width: 4, depth: 6 } })).status).toBe('warn');
    expect(finding('groove_land', own({ groove: { width: 10, depth: 3 } })).status).toBe('fail');
  });

  test('a sheet gasket’s edge is marked 1 mm outside the opening', () => {
    const { flange } = bead(own({ gasket: 'paper' }));
    expect(flange.marks.map((m) => m.what)).toEqual(['gasket edge, paper']);
    expectWithin(pathGap(flange.marks[0]!.path, flange.openings[0]!), 1, 1e-9, 'back');
  });
});
