import { movePath, type Path, pathArea, pathGap, reversePath } from 'pan-core/geometry/index.js';
import { flangePieces, shopFindings } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { area, box, type Change, finding, made, own, part, STRIP, WHOLE } from '../flange-trial.js';
import { expectWithin } from '../numbers.js';

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
