import { checkDesign } from 'pan-core/check/index.js';
import type { Bung, Design } from 'pan-core/design/index.js';
import { pathBox } from 'pan-core/geometry/index.js';
import { buildPan, floorProfile, panelsOf, platesOf } from 'pan-core/pan/index.js';
import {
  bendRule,
  cutParts,
  type Part,
  type SheetFinding,
  sheetFindings,
  sheetTrees,
  treeParts,
} from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { mirrored } from '../mirror-design.js';
import { expectWithin } from '../numbers.js';
import { refold } from '../properties/refold.js';
import { type Mutable, stepDesign } from '../sample-design.js';

const bung = (of: Partial<Bung>): Bung => ({
  name: 'one',
  purpose: 'other',
  at: [200, 100, -100],
  toward: [200, 160, -100],
  diameter: 24,
  ...of,
});

const withBungs = (bungs: readonly Bung[], change: (d: Mutable<Design>) => void = () => {}): Design =>
  stepDesign((d) => {
    d.pan.joints.welded = [];
    d.bungs = structuredClone(bungs) as typeof d.bungs;
    change(d);
  });

const partsOf = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};

const finding = (design: Design, id: string): SheetFinding => {
  const found = sheetFindings(design, floorProfile(design), partsOf(design)).find((f) => f.id === id);
  if (found === undefined) throw new Error(`no finding ${id}`);
  return found;
};

describe('a bung’s hole', () => {
  // The step's folded corners are 5 mm inside radius; nothing here stands on one.
  const design = withBungs(
    [
      bung({
        name: 'on the sloped shallow',
        at: [500, 30, -(50 - (500 - 300) / 40)],
        toward: [500, 30, -90],
      }),
      bung({ name: 'on the sump floor', at: [150, -40, -200], toward: [150, -40, -260] }),
      bung({ name: 'on the side', at: [123.4, 100, -87.6], toward: [123.4, 190, -87.6] }),
      bung({ name: 'on the rear', at: [0, -33.3, -120], toward: [-60, -33.3, -120] }),
    ],
    (d) => {
      d.pan.floor = [
        [700, 40],
        [300, 50],
        [300, 200],
        [0, 200],
      ];
      d.pan.joints.fold = [['sump floor', 'side left']];
      d.pan.joints.weld = [['step', 'side left']];
      d.bungs[0]!.at = [500, 30, -45];
    },
  );

  test('bent up again lies where it was asked for, to 1e-9', () => {
    const profile = floorProfile(design);
    const job = { design, profile, rule: bendRule(design), notches: [], plates: [] };
    const trees = sheetTrees(job);
    const parts = treeParts(job);
    let seen = 0;
    trees.blanks.forEach((blank, i) => {
      // A part is moved so that its box begins at 0, 0.
      const corner = pathBox(blank.loops[0]!).min;
      const bent = refold(trees, blank, design.pan.sheet.bendRadius, design.pan.sheet.thickness);
      for (const hole of parts[i]!.holes) {
        const { at } = design.bungs.find(({ name }) => name === hole.bung)!;
        const off = blank.leaves.map((leaf) => {
          const q = bent.get(leaf)!([hole.at[0] + corner[0], hole.at[1] + corner[1]]);
          return Math.hypot(q[0] - at[0], q[1] - at[1], q[2] - at[2]);
        });
        expectWithin(Math.min(...off), 0, 1e-9, hole.what);
        seen++;
      }
    });
    expect(seen).toBe(4);
  });

  test('a mirrored pan has it in the mirrored place', () => {
    const one = withBungs([bung({})]);
    const other = mirrored(withBungs([]));
    const twin = {
      ...other,
      bungs: [bung({ at: [200, -100, -100], toward: [200, -160, -100] })],
    } as Design;
    const left = partsOf(one).find(({ name }) => name === 'side left')!;
    const right = partsOf(twin).find(({ name }) => name === 'side right')!;
    expectWithin(right.holes[0]!.at[0], left.flat[0] - left.holes[0]!.at[0], 1e-9, 'along');
    expectWithin(right.holes[0]!.at[1], left.holes[0]!.at[1], 1e-9, 'up');
  });

  test('names its thread', () => {
    const [hole] = partsOf(withBungs([bung({ thread: { diameter: 14, pitch: 1.5 } })])).flatMap((p) =>
      p.holes.filter((h) => h.bung !== undefined),
    );
    expect(hole!.what).toBe('one, other bung M14x1.5');
  });
});

describe('a bung where there used to be none', () => {
  const wing = {
    name: 'wing',
    side: 'left' as const,
    rear: 60,
    front: 240,
    topDown: { rear: 100, front: 100 },
    topFall: 0,
    beyondWall: { rear: 60, front: 60 },
  };

  test('a wing’s cap takes it, at its place from the outer wall and the floor', () => {
    for (const [x, end] of [
      [60, 'rear'],
      [240, 'front'],
    ] as const) {
      for (const side of ['left', 'right'] as const) {
        const sign = side === 'left' ? 1 : -1;
        const design = withBungs(
          [bung({ at: [x, sign * 133, -155], toward: [x + (end === 'rear' ? -50 : 50), sign * 133, -155] })],
          (d) => {
            d.pan.wings = [{ ...wing, side }];
          },
        );
        const cap = partsOf(design).find(({ name }) => name === `wing ${end} cap`)!;
        const [hole] = cap.holes;
        // 160 out is the outer wall; seen from the oil it lies at the left on a left front and a right rear cap.
        const outerAtLeft = (end === 'rear') !== (side === 'left');
        const fromOuter = outerAtLeft ? hole!.at[0] : cap.flat[0] - hole!.at[0];
        expectWithin(fromOuter, 160 - 133, 1e-9, `${end} ${side}`);
        expectWithin(hole!.at[1], 200 - 155, 1e-9, 'up from the floor');
        expect(finding(design, 'bung_seat').status).toBe('pass');
      }
    }
  });

  test('a notch’s plate takes it', () => {
    const design = withBungs([bung({ at: [250, 20, -150], toward: [250, 20, -260] })], (d) => {
      d.pan.notches = [{ kind: 'box', name: 'rack', min: [220, -300, -250], max: [280, 300, -150] }];
    });
    const roof = partsOf(design).find(({ name }) => name === 'rack roof')!;
    expect(roof.holes.map(({ bung: name }) => name)).toEqual(['one']);
    // The roof goes from side to side, 200 wide: its middle is 20 from the bung.
    const across = roof.flat[0] === 200 ? 0 : 1;
    expectWithin(Math.abs(roof.holes[0]!.at[across]! - 100), 20, 1e-9, 'across');
    expect(finding(design, 'bung_seat').status).toBe('pass');
  });

  test('one that lies off the sheet says how far and which way', () => {
    const design = withBungs([bung({ at: [200, 88, -100] })]);
    const model = buildPan(design);
    const found = sheetFindings(design, model.profile, partsOf(design), panelsOf(model)).find(
      ({ id }) => id === 'bung_seat',
    )!;
    expect(found.because).toContain('12.0 mm off the inside face of the left side');
    expect(found.try).toContain('Move its place 12.0 mm left,');
    const low = withBungs([bung({ at: [150, 0, -230] })]);
    const under = sheetFindings(low, model.profile, partsOf(low), panelsOf(model)).find(
      ({ id }) => id === 'bung_seat',
    )!;
    expect(under.try).toContain('30.0 mm up');
  });
});

describe('what the sheet says of bungs', () => {
  test('room is measured from the rim to the edge, the bend and the next bung', () => {
    // Side: 200 long, from z = 0 down; its edge at the top is the rail.
    const edge = finding(withBungs([bung({ at: [200, 100, -20], toward: [200, 200, -20] })]), 'bung_room');
    expectWithin(edge.value, 20 - 12, 1e-9, 'to the rail');
    expect(edge.status).toBe('warn');
    const over = finding(withBungs([bung({ at: [200, 100, -9], toward: [200, 200, -9] })]), 'bung_room');
    expectWithin(over.value, 9 - 12, 1e-9, 'over the rail');
    expect(over.status).toBe('fail');
    // Sump floor: flat from x = 5, where the rear bend of 5 mm inside radius ends.
    const bend = finding(withBungs([bung({ at: [25, 0, -200], toward: [25, 0, -250] })]), 'bung_room');
    expectWithin(bend.value, 25 - 5 - 12, 1e-9, 'to the bend');
    expect(bend.because).toContain('bend');
    const pair = finding(
      withBungs([bung({}), bung({ name: 'two', at: [230, 100, -100], toward: [230, 200, -100] })]),
      'bung_room',
    );
    expectWithin(pair.value, 30 - 24, 1e-9, 'between two');
    expect(finding(withBungs([bung({})]), 'bung_room').status).toBe('pass');
  });

  test('a baffle’s foot takes room as well', () => {
    const found = finding(
      withBungs([bung({})], (d) => {
        d.baffles = [
          {
            kind: 'wall',
            name: 'wall',
            run: 'across',
            at: 215,
            span: null,
            topDown: 60,
            weep: 4,
            fixed: 'welded',
            thickness: 3,
            doors: [],
            holes: [],
          },
        ];
      }),
      'bung_room',
    );
    expectWithin(found.value, 15 - 12, 1e-9, 'to the wall');
    expect(found.because).toContain('wall, rear face');
  });

  test('one in the air, or on the flange, fails: no hole would be cut for it', () => {
    const found = finding(withBungs([bung({}), bung({ name: 'lost', at: [200, 60, -100] })]), 'bung_seat');
    expect(found.status).toBe('fail');
    expect(found.value).toBe(1);
    expect(found.because).toContain('"lost"');
    expect(finding(withBungs([bung({})]), 'bung_seat').status).toBe('pass');
  });

  test('one that leans wants a longer hole: d / cos', () => {
    const at = [200, 100, -100] as const;
    const lean = (20 * Math.PI) / 180;
    const toward = [200, 100 + 50 * Math.cos(lean), -100 + 50 * Math.sin(lean)] as const;
    const found = finding(withBungs([bung({ at, toward })]), 'bung_square');
    expectWithin(found.value, 20, 1e-9, 'lean');
    expect(found.try).toContain(`${(24 / Math.cos(lean)).toFixed(1)} mm long`);
    expect(finding(withBungs([bung({})]), 'bung_square').status).toBe('pass');
  });
});

describe('bungs against the oil at rest', () => {
  // Flat pool in a sump of 300 × 200: oil stands at its own volume over the area, the tilt being none.
  const oil = (d: Mutable<Design>): void => {
    d.oil.fill = 5e6;
    d.oil.filter = 0;
    d.oil.heldUp = 0;
    d.oil.galleries = 0;
  };
  const check = (of: Partial<Bung>) => {
    const report = checkDesign({ design: withBungs([bung(of)], oil), assumed: [], unknown: [] });
    const row = report.checks.find(({ id }) => id === 'bung_level_one')!;
    return { row, level: report.levels.running_mm! };
  };

  test('a return has its lowest edge over it', () => {
    const { row, level } = check({ purpose: 'return', at: [200, 100, -115], toward: [200, 160, -115] });
    expectWithin(row.value, level - 115 - 12, 1e-6, 'over the oil');
    expect(row.status).toBe('fail');
    expect(check({ purpose: 'return', at: [200, 100, -40], toward: [200, 160, -40] }).row.status).toBe(
      'pass',
    );
  });

  test('senders and magnets stand under it', () => {
    for (const purpose of ['level', 'temperature', 'magnet'] as const) {
      const { row, level } = check({ purpose, at: [200, 100, -150], toward: [200, 160, -150] });
      expectWithin(row.value, 150 - level, 1e-6, purpose);
      expect(row.status, purpose).toBe('pass');
      expect(check({ purpose, at: [200, 100, -40], toward: [200, 160, -40] }).row.status, purpose).toBe(
        'warn',
      );
    }
  });
});
