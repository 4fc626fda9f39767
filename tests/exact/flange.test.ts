import type { Design, EndSeal, Flange } from 'pan-core/design/index.js';
import {
  movePath,
  type Path,
  pathArea,
  pathBox,
  pathGap,
  pathLength,
  reversePath,
} from 'pan-core/geometry/index.js';
import { endSealSizes, floorProfile, outerSolids } from 'pan-core/pan/index.js';
import {
  cutParts,
  flangeHoles,
  flangeJoints,
  flangeParts,
  flangePieces,
  type Part,
  type SheetFinding,
  sheetFindings,
  shopFindings,
} from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign } from '../sample-design.js';

// The sample's rail is 700 x 250 with bolts at y ±114, its pan 190 wide between x 32 and 655 in 3 mm sheet.
type Change = (d: Mutable<Design>) => void;

/** The sample with these of its flange changed. */
const own =
  (keys: Partial<Flange>): Change =>
  (d) => {
    Object.assign(d.pan.flange, keys);
  };

const made = (change?: Change) => {
  const design = sampleDesign(change);
  const profile = floorProfile(design);
  return { design, profile, parts: flangeParts(design, profile) };
};

const part = (parts: readonly Part[], name: string): Part => {
  const found = parts.find((p) => p.name === name);
  if (found === undefined) throw new Error(`No part ${name}`);
  return found;
};

const finding = (id: string, change: Change): SheetFinding => {
  const { design, profile, parts } = made(change);
  const found = sheetFindings(design, profile, parts).find((f) => f.id === id);
  if (found === undefined) throw new Error(`No finding ${id}`);
  return found;
};

const box = (path: Path) => {
  const { min, max } = pathBox(path);
  return [min[0], min[1], max[0], max[1]];
};

const WHOLE = made();
const [REAR, , FRONT, LEFT] = box(pathOf(WHOLE)) as [number, number, number, number];

function pathOf({ design, profile }: typeof WHOLE): Path {
  return flangePieces(design, profile)[0]!.outline;
}

const STRIP = LEFT - 95 - 3.2;
const area = (pieces: readonly { outline: Path; openings: readonly Path[] }[]): number =>
  pieces.reduce((sum, p) => sum + pathArea(p.outline) + p.openings.reduce((s, o) => s + pathArea(o), 0), 0);

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

describe('relief between the bolts', () => {
  test('leaves the land asked for, and takes off one segment of a circle each', () => {
    const land = 20;
    const { design, profile, parts } = made(own({ lighten: { land } }));
    const flange = part(parts, 'flange');
    const arcs = flange.outline.filter((s) => s.kind === 'arc');
    expect(arcs.length).toBeGreaterThan(8);
    expectWithin(
      arcs.reduce((least, s) => Math.min(least, pathGap([s], flange.openings[0]!)), Number.POSITIVE_INFINITY),
      land,
      1e-9,
      'land',
    );
    const gone = arcs.reduce(
      (sum, s) =>
        sum +
        (s.kind === 'arc' ? (s.radius ** 2 / 2) * (Math.abs(s.sweep) - Math.sin(Math.abs(s.sweep))) : 0),
      0,
    );
    expectWithin(
      area(flangePieces(design, profile)),
      area(flangePieces(WHOLE.design, WHOLE.profile)) - gone,
      1e-8,
      'area',
    );
    // Chord 60 − 2 · 1.5 · 9 between bolts 60 apart; the arc is as deep as the strip less the land allows.
    const chord = 60 - 27;
    const depth = Math.min(STRIP - land, chord / 4);
    const side = arcs.find((s) => Math.abs(s.to[0] - s.from[0]) > 30 && Math.abs(s.to[0] - s.from[0]) < 34)!;
    expectWithin(
      side.kind === 'arc' ? side.radius : 0,
      (chord * chord) / (8 * depth) + depth / 2,
      1e-9,
      'radius',
    );
    expect(shopFindings(flange).filter((f) => f.severity === 'fault')).toEqual([]);
  });

  test('a land as wide as the strip takes nothing off', () => {
    const { parts } = made(own({ lighten: { land: 60 } }));
    expect(part(parts, 'flange').outline).toEqual(part(WHOLE.parts, 'flange').outline);
  });
});

describe('dowels and holes for later', () => {
  const dowels: Change = (d) => {
    d.pan.flange.dowels = [
      { at: [45, 112], size: 8, fit: 'close' },
      { at: [645, 112], size: 8, fit: 'easy' },
    ];
  };

  test('a close dowel hole has 0.1 mm room and an easy one 0.5', () => {
    const holes = part(made(dowels).parts, 'flange').holes.slice(-2);
    expect(holes.map((h) => h.diameter)).toEqual([8.1, 8.5]);
    expect(holes.map((h) => h.what)).toEqual(['8 mm dowel, close', '8 mm dowel, easy']);
  });

  test('holes for later are marked on the flange, not cut, and cut in the strongback', () => {
    const change: Change = (d) => {
      dowels(d);
      d.pan.flange.drillAfterWeld = d.pan.flange.dowels.map(({ at }) => at);
    };
    const { parts } = made(change);
    const [flange, back] = [part(parts, 'flange'), part(parts, 'strongback')];
    const bolts = WHOLE.design.engine.railHoles.length;
    expect(flange.holes).toHaveLength(bolts);
    expect(flange.pilots?.map((h) => h.diameter)).toEqual([8.1, 8.5]);
    expect(back.holes).toHaveLength(bolts + 2);
    expect(back.pilots ?? []).toEqual([]);
    expectWithin(
      flange.area - part(made(dowels).parts, 'flange').area,
      (Math.PI / 4) * (8.1 ** 2 + 8.5 ** 2),
      1e-8,
      'metal that is still there',
    );
    const rings = flange.marks.filter((m) => m.what.startsWith('drill'));
    expect(rings).toHaveLength(2);
    const [ring] = rings;
    const [x0, y0, x1, y1] = box(ring!.path) as [number, number, number, number];
    expect([(x0 + x1) / 2 - flange.pilots![0]!.at[0], (y0 + y1) / 2 - flange.pilots![0]!.at[1]]).toEqual([
      0, 0,
    ]);
    expect(finding('clamp_holes', change).status).toBe('pass');
    expect(
      finding('clamp_holes', (d) => {
        d.pan.flange.drillAfterWeld = d.engine.railHoles.map(({ at }) => at);
      }).status,
    ).toBe('warn');
  });

  test('a pattern that fits turned over is told by how far it misses', () => {
    const told = finding('flange_hand', dowels);
    expect(told.status).toBe('pass');
    expectWithin(told.value ?? 0, 224, 1e-9, 'both dowels lie on one side');
    const blind = finding('flange_hand', (d) => {
      d.pan.flange.dowels = [
        { at: [45, 112], size: 8, fit: 'close' },
        { at: [45, -111.5], size: 8, fit: 'close' },
      ];
    });
    expect(blind.status).toBe('warn');
    expectWithin(blind.value ?? 0, 0.5, 1e-9, 'half a millimetre apart');
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

describe('pitch against stiffness', () => {
  const wide: Change = (d) => {
    d.pan.flange.gasket = 'hard rubber';
    d.engine.railHoles = [
      { at: [100, 114], thread: 8 },
      { at: [210, 114], thread: 8 },
    ];
  };

  test('the published rule: 2a + 6t/(m + 0.5)', () => {
    const found = finding('gasket_pitch', wide);
    expectWithin(found.value ?? 0, 110, 1e-12, 'pitch');
    expectWithin(found.limit ?? 0, 16 + 60 / 1.5, 1e-12, 'limit');
    expect(found.status).toBe('warn');
    expectWithin(finding('gasket_pitch', () => {}).limit ?? 0, 16 + 60 / 0.5, 1e-12, 'a bead, m 0');
  });

  test('the lift half-way: a beam built in at both ends under an even load, by its own differential equation', () => {
    const found = finding('flange_lift', wide);
    // E I v'''' = w with v = v' = 0 at both ends: v = w x² (L − x)²/(24 E I); w = y b, I = b t³/12, any b.
    const [b, t, L, E, y] = [23, 10, 110, 70000, 200 * 0.006894757];
    const v = ((y * b) / ((24 * E * b * t ** 3) / 12)) * (L / 2) ** 2 * (L / 2) ** 2;
    expectWithin(found.value ?? 0, v, 1e-12, 'lift');
    expect(found.status).toBe('pass');
    const thin = finding('flange_lift', (d) => {
      wide(d);
      d.pan.flange.thickness = 8;
    });
    expect(thin.status).toBe('warn');
    // As thick as it says, it just holds.
    const said = Number(/of ([\d.]+) mm/.exec(thin.try)?.[1]);
    expectWithin(said, 8 * Math.cbrt((thin.value ?? 0) / 0.1), 0.05, 'thickness');
  });
});

test('a mirrored design gives a mirrored flange, with every feature on it', () => {
  const change =
    (s: 1 | -1): Change =>
    (d) => {
      d.engine.railHoles = d.engine.railHoles.map((h) => ({ ...h, at: [h.at[0], s * h.at[1]] }));
      d.pan.flange.lighten = { land: 18 };
      d.pan.flange.dowels = [{ at: [270, s * 112], size: 8, fit: 'close' }];
      d.pan.flange.drillAfterWeld = [[270, s * 112]];
      d.pan.flange.split = { way: 'lengthwise', at: s * 12, joint: 'scarf' };
      d.pan.flange.groove = { width: 3, depth: 2 };
      d.pan.flange.endSeals = [
        { end: 'front', radius: 75, centreAboveRail: 62, across: s * 9, land: 10, groove: null },
      ];
    };
  const shapes = (s: 1 | -1) => {
    const { design, profile } = made(change(s));
    return flangePieces(design, profile);
  };
  const mirrored = (path: Path): Path => reversePath(movePath({ mirror: 'y' }, path));
  const [one, other] = [shapes(1), shapes(-1)];
  expect(one.map((p) => p.name).sort()).toEqual(['flange left', 'flange right']);
  for (const piece of one) {
    const twin = other.find(
      (p) => p.name === (piece.name === 'flange left' ? 'flange right' : 'flange left'),
    )!;
    const image = mirrored(twin.outline);
    expectWithin(pathArea(piece.outline), pathArea(image), 1e-8, piece.name);
    expect(piece.outline).toHaveLength(image.length);
    for (const s of piece.outline) {
      const near = Math.min(...image.map((t) => Math.hypot(t.from[0] - s.from[0], t.from[1] - s.from[1])));
      expectWithin(near, 0, 1e-9, `${piece.name} vertex`);
    }
  }
});
