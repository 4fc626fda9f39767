import { checkDesign } from 'pan-core/check/index.js';
import type { Design, Lid } from 'pan-core/design/index.js';
import { meshVolume, partsInPlace } from 'pan-core/drawing/index.js';
import { pathArea, pathBox, pathLength } from 'pan-core/geometry/index.js';
import { buildPan, floorProfile, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part, sheetFindings } from 'pan-core/sheet/index.js';
import { panSeams, panSkin } from 'pan-core/weld/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign } from '../sample-design.js';

const deg = Math.PI / 180;

const tray = (of: Partial<Lid> = {}): Lid => ({
  kind: 'lid',
  tray: true,
  name: 'tray',
  down: 36,
  rear: 50,
  front: 610,
  span: [-80, 60],
  fixed: 'bolted',
  thickness: 2,
  holes: [],
  ...of,
});

const withLids = (...lids: readonly Lid[]): Design =>
  sampleDesign((d) => {
    d.baffles = structuredClone(lids) as Mutable<Lid>[];
  });

const partsOf = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};

const partNamed = (design: Design, name: string): Part => {
  const found = partsOf(design).find((part) => part.name === name);
  if (found === undefined) throw new Error(`no part ${name}`);
  return found;
};

const finding = (design: Design, id: string) => {
  const found = sheetFindings(design, floorProfile(design), partsOf(design)).find((f) => f.id === id);
  if (found === undefined) throw new Error(`no finding ${id}`);
  return found;
};

const check = (design: Design, id: string) => {
  const read = { design, assumed: [], unknown: [], rail: null };
  const found = checkDesign(read as unknown as Parameters<typeof checkDesign>[0]).checks.find(
    (c) => c.id === id,
  );
  if (found === undefined) throw new Error(`no check ${id}`);
  return found;
};

describe('louvres', () => {
  const [rows, count, length, width, bend, slit] = [3, 4, 60, 14, 30 * deg, 2];
  const design = withLids(tray({ louvres: { rows, count, size: [length, width], bend, opens: 'right' } }));

  test('are closed slits round three sides, the tongue left standing', () => {
    const part = partNamed(design, 'tray');
    expect(part.openings).toHaveLength(rows * count);
    // A U of two legs and a bar as wide as the slit, each leg with half a circle at its end.
    const area = slit * (2 * width + length - 2 * slit) + (Math.PI / 4) * slit ** 2;
    const round = length + 2 * width + 2 * (width - slit) + (length - 2 * slit) + Math.PI * slit;
    for (const opening of part.openings) {
      expectWithin(-pathArea(opening), area, 1e-9);
      expectWithin(pathLength(opening), round, 1e-9);
    }
    expectWithin(part.area, 559 * 139 - rows * count * area, 1e-6);
    expect(part.marks).toHaveLength(rows * count);
  });

  test('turn round with the side they open at', () => {
    const other = withLids(tray({ louvres: { rows, count, size: [length, width], bend, opens: 'left' } }));
    const hinges = (d: Design): readonly number[] =>
      partNamed(d, 'tray').marks.map((m) => m.path[0]!.from[1]);
    const [right, left] = [hinges(design), hinges(other)];
    for (const [i, y] of right.entries()) expectWithin(y - left[i]!, width, 1e-9);
  });

  test('pass oil through a throat as high as the tongue hangs down', () => {
    const openings = buildPan(design).openings.filter((o) => o.kind === 'hole');
    const throat = slit + (width - slit) * Math.sin(bend);
    const sum = openings.reduce((s, o) => s + o.area, 0);
    expectWithin(sum, rows * count * length * throat, 1e-6);
  });

  test('take their share of the tray off the metal that displaces oil', () => {
    const metal = (d: Design): number => {
      const model = buildPan(d);
      return model.volumes.reduce(
        (s, v, i) => s + (model.cells[i]?.zone === 'crankcase' ? 0 : v * (1 - model.shares[i]!)),
        0,
      );
    };
    const [none, plain, louvred] = [withLids(), withLids(tray()), design].map(metal) as [
      number,
      number,
      number,
    ];
    const throat = slit + (width - slit) * Math.sin(bend);
    expectWithin(plain - none, 2 * 560 * 140, 1e-3);
    expectWithin(plain - louvred, 2 * rows * count * length * throat, 1e-3);
  });
});

describe('rows of slots', () => {
  const row = { count: 5, size: [24, 6], inset: 10 } as const;

  test.each(['rear', 'front', 'left', 'right'] as const)(
    'along the %s lie at their inset, evenly',
    (along) => {
      const design = withLids(tray({ slots: [{ along, ...row }] }));
      const part = partNamed(design, 'tray');
      expect(part.openings).toHaveLength(5);
      const across = along === 'rear' || along === 'front';
      const run = across ? 140 : 560;
      part.openings.forEach((opening) => {
        expectWithin(-pathArea(opening), 24 * 6 - (1 - Math.PI / 4) * 36, 1e-9);
        const { min, max } = pathBox(opening);
        // The plate is half a millimetre smaller than its place all round.
        const near = {
          rear: min[0],
          front: part.flat[0] - max[0],
          right: min[1],
          left: part.flat[1] - max[1],
        };
        expectWithin(near[along], 10 - 0.5, 1e-9);
      });
      const middles = part.openings
        .map((o) => pathBox(o))
        .map(({ min, max }) => (across ? min[1] + max[1] : min[0] + max[0]) / 2 + 0.5);
      for (const [i, m] of middles.entries()) expectWithin(m, ((i + 0.5) / 5) * run, 1e-9);
      const sum = buildPan(design)
        .openings.filter((o) => o.kind === 'hole')
        .reduce((s, o) => s + o.area, 0);
      expectWithin(sum, 5 * (144 - (1 - Math.PI / 4) * 36), 1e-6);
    },
  );

  test('that reach past the plate are refused with the number', () => {
    const design = withLids(tray({ slots: [{ along: 'rear', count: 2, size: [90, 6], inset: 10 }] }));
    expect(() => buildPan(design)).toThrow(/slot 1 of row 1 in tray reaches past its plate/);
  });

  test('let off what a closed lid keeps: a wedge up to the hole', () => {
    // Nose up, so that oil on the lid lies against the rear wall, up to the hole’s rear edge.
    const noseUp = 3 * deg;
    const lid = (of: Partial<Lid>): Lid =>
      tray({ tray: undefined as never, name: 'lid', down: 82, rear: 0, front: 330, span: null, ...of });
    const make = (of: Partial<Lid>): Design => {
      const { tray: _, ...rest } = lid(of);
      return sampleDesign((d) => {
        d.engine.tilt = { noseUp, leanLeft: 0 };
        d.pan.wings = [];
        d.pickup.route = [];
        d.baffles = [rest as Mutable<Lid>];
      });
    };
    const hole = { at: [200, 0], size: [20, 20] } as const;
    const model = buildPan(make({ holes: [hole] }));
    // Metal stands in the oil: what is left of the cells is their share.
    const share = Math.min(...model.blocked.map((b) => model.shares[b.cell]!));
    const wedge = (190 * (190 - 32) ** 2 * Math.tan(noseUp)) / 2 / 1e6;
    const kept = check(make({ holes: [hole] }), 'lid_hollow');
    expect(kept.status).toBe('warn');
    expect(kept.value! <= wedge && kept.value! >= wedge * share * 0.999).toBe(true);
    const slots = [{ along: 'rear', count: 3, size: [50, 6], inset: 4 }] as const;
    const let_ = check(make({ holes: [hole], slots }), 'lid_hollow');
    expectWithin(let_.value!, kept.value! * (4 / (190 - 32)) ** 2, 1e-6);
    expect(let_.status).toBe('pass');
  });
});

describe('a tray', () => {
  test('stands under as much oil as its open area needs at full flow', () => {
    const design = withLids(tray());
    const area = 560 * 140;
    const all = buildPan(design)
      .openings.filter((o) => o.baffle === 0)
      .reduce((s, o) => s + o.area, 0);
    // The pan is 190 wide from x 32 to 655; what opens into the front bend's own slices is left out, 5 % of it here.
    const beside = 190 * 623 - area;
    expect(all <= beside && all > 0.95 * beside).toBe(true);
    // Sharp-edged orifice, middle of the textbook range 0.60 to 0.62; the surge run takes the same.
    const head = (design.oil.pump! / (0.61 * all)) ** 2 / (2 * 9806.65);
    expectWithin(check(design, 'tray_drain').value!, head, 1e-12);
  });

  test('does not stop a wall on its way to the lid below it, and a lid does', () => {
    const wall = sampleDesign().baffles[1]!;
    const lid = sampleDesign().baffles[0]!;
    const top = (d: Design): number => buildPan(d).barriers.find((b) => b.baffle.kind === 'wall')!.top;
    const design = sampleDesign((d) => {
      d.baffles = structuredClone([tray(), lid, wall]) as typeof d.baffles;
    });
    expect(top(design)).toBe(82);
  });
});

describe('stops of doors', () => {
  const wall = {
    kind: 'wall',
    name: 'front wall',
    run: 'across',
    at: 240,
    span: null,
    topDown: 60,
    weep: 4,
    fixed: 'welded',
    thickness: 3,
    doors: [
      { size: [50, 35], at: -45, up: 10, letsOil: 'rearward' },
      { size: [50, 35], at: 45, up: 10, letsOil: 'forward' },
    ],
    holes: [],
  } as const;
  const withWall = (topDown: number): Design =>
    sampleDesign((d) => {
      d.baffles = [structuredClone({ ...wall, topDown })] as unknown as Mutable<Lid>[];
    });
  const seamOf = (design: Design) =>
    panSeams(buildPan(design)).find(({ name }) => name === 'door stops of front wall to it')!;

  test('their feet are welded over the hinge, on the face that the flap hangs on', () => {
    const seam = seamOf(withWall(60));
    expect([seam.length, seam.lines.length]).toEqual([2 * 2 * 15, 4]);
    const tops = platesOf(buildPan(withWall(60)))[0]!.openings.map(({ outline }) =>
      Math.max(...outline.map(([, v]) => v)),
    );
    seam.lines.forEach(({ root: [a, b] }, i) => {
      // Land 6 and hinge band 12 over the opening, then the foot of 15, 15 wide; rearward is the face at x 240.
      const top = tops[Math.floor(i / 2)]!;
      expect(a![0]).toBe(i < 2 ? 240 : 243);
      expectWithin(a![1], (i < 2 ? -45 : 45) + (i % 2 === 0 ? -7.5 : 7.5), 1e-9, `stop ${i} across`);
      expectWithin(a![2], top + 18, 1e-9, `stop ${i} foot`);
      expectWithin(b![2], top + 33, 1e-9, `stop ${i} end`);
    });
  });

  test('have what metal is over the hinge, and a warning where it is short', () => {
    const top = Math.max(
      ...platesOf(buildPan(withWall(60)))[0]!.openings.flatMap(({ outline }) => outline.map(([, v]) => v)),
    );
    for (const [room, foot] of [
      [50, 15],
      [25, 7],
    ] as const) {
      const design = withWall(-(top + room));
      expectWithin(seamOf(design).length, 2 * 2 * foot, 1e-9, `room ${room}`);
      const { value, limit, status } = check(design, 'door_head');
      expectWithin(value!, room, 1e-9, 'room told');
      const stop = partNamed(design, 'front wall door 1 stop');
      expect(stop.notes[0]).toContain('Foot 15 mm');
      expect(stop.notes.some((note) => note.includes(`cut the foot back to ${foot} mm`))).toBe(foot < 15);
      expect([limit, status]).toEqual([6 + 12 + 10, room < 28 ? 'warn' : 'pass']);
    }
    expect(seamOf(withWall(-(top + 10)))).toBeUndefined();
  });
});

describe('tabs', () => {
  const tabs = { eachSide: 3, size: 6 };

  test('carry their bolts under the plate’s holes', () => {
    const design = withLids(tray({ span: [-90, 60], tabs }));
    const plate = partNamed(design, 'tray');
    const bolts = plate.holes.filter(({ what }) => what === 'M6 bolt to its tab');
    expect(bolts).toHaveLength(6);
    for (const { diameter } of bolts) expect(diameter).toBe(6.6);
    const tab = partsOf(design).filter(({ name }) => name.startsWith('tray tab'));
    expect(tab.map(({ quantity }) => quantity)).toEqual([3, 3]);
    for (const part of tab) {
      const [fold, hole] = [part.folds[0]!, part.holes[0]!];
      // Over the outside of the bend: what lies past the bend zone, and the bend’s outer radius, R 5 + T 2.
      const beyond = hole.at[0] - fold.from[0] - fold.allowance / 2 + 7;
      const sides = bolts.map(({ at }) => at[1] - 90 + 0.5);
      expect(sides.some((y) => Math.abs(95 - Math.abs(y) - beyond) < 1e-9)).toBe(true);
    }
  });

  test('have their feet in the weld plan, on the sides and clear of the bend', () => {
    const seam = panSeams(buildPan(withLids(tray({ tabs })))).find(
      ({ name }) => name === 'tabs of tray to the sides',
    );
    // Foot of 25, of which the bend’s outer radius, R 5 + T 2, stands off the wall.
    expectWithin(seam!.length, 6 * 2 * (25 - 7), 1e-9, 'length');
    expect(seam?.size).toBe(2);
    expect(seam?.lines).toHaveLength(12);
    for (const { root } of seam!.lines) {
      const [a, b] = [root[0]!, root[1]!];
      expect([Math.abs(a[1]), Math.abs(b[1])]).toEqual([95, 95]);
      expect([a[0], a[2], b[2]]).toEqual([b[0], -36 - 7, -36 - 25]);
    }
  });

  test('stand in the pan as solids at the plate’s bolts, which go through it', async () => {
    const design = withLids(tray({ span: [-90, 60], tabs }));
    const model = buildPan(design);
    const solids = await partsInPlace(model, panSkin(model));
    const tab = solids.filter(({ name }) => name.startsWith('tray tab'));
    expect(tab).toHaveLength(6);
    const parts = partsOf(design);
    for (const { name, mesh } of tab) {
      const part = parts.find((p) => p.name.startsWith('tray tab') && name.startsWith(p.name))!;
      // Blank less its bend zone, and a quarter ring of mean radius R + T / 2; chords of the arc within 0.02 mm.
      const [length, width] = part.flat;
      const straight = length - part.folds[0]!.allowance;
      const volume = 2 * width * (straight + (Math.PI / 2) * (5 + 1));
      expectWithin(meshVolume(mesh) / volume, 1, 2e-3, `${name} volume`);
      const ys = mesh.points.map((p) => p[1]);
      expectWithin(Math.max(...ys.map(Math.abs)), 95, 1e-5, `${name} on the wall`);
      expectWithin(Math.max(...mesh.points.map((p) => p[2])), -36, 1e-5, `${name} under the tray`);
    }
    const plate = solids.find(({ name }) => name === 'tray')!;
    const part = parts.find(({ name }) => name === 'tray')!;
    // The drawing is smaller by the fit gap all round: 0.5 mm of 560 × 150.
    const [x, y] = [part.flat[0] + 1, part.flat[1] + 1];
    const holes = 6 * (Math.PI / 4) * 6.6 * 6.6;
    expectWithin(meshVolume(plate.mesh) / (2 * (x * y - holes)), 1, 1e-4, 'tray with its holes');
  });

  test('need a wall behind them: a wing’s opening has none', () => {
    expect(finding(withLids(tray({ rear: 350, front: 600, tabs, down: 25 })), 'tab_wall').status).toBe(
      'fail',
    );
    expect(finding(withLids(tray({ rear: 60, front: 300, tabs })), 'tab_wall').status).toBe('pass');
    const low = finding(withLids(tray({ rear: 60, front: 300, down: 80, tabs })), 'tab_wall');
    // Wing’s top at 95 and foot to 80 + 25: ten short, on the wing’s side only.
    expect([low.status, low.value]).toEqual(['fail', 3]);
    expect(low.because).toContain('10 mm');
  });

  test('studs keep clear of tongues and slots', () => {
    const louvres = { rows: 2, count: 2, size: [100, 20], bend: 30 * deg, opens: 'right' } as const;
    const at = (x: number) =>
      finding(withLids(tray({ louvres, studs: { size: 8, at: [[x, 25]] } })), 'mount_room');
    // Louvres reach from x 140 to 240 and from 420 to 520; the hole is 9 wide.
    expectWithin(at(260).value!, 20 - 4.5, 1e-9);
    expect(at(260).status).toBe('pass');
    expect(at(200).status).toBe('fail');
  });
});
