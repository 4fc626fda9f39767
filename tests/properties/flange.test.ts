import type { Design, Flange } from 'pan-core/design/index.js';
import { movePath, type Path, pathArea, pathGap, pathLength, reversePath } from 'pan-core/geometry/index.js';
import { seededStream } from 'pan-core/numeric/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import {
  flangeJoints,
  flangeOpening,
  flangeParts,
  flangePieces,
  flangeRim,
  type Part,
  sheetFindings,
  shopFindings,
} from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';

const SEED = Number(process.env.PAN_SEED ?? 5209);
const COUNT = 250;

/** A flange on a rail of four to six corners with every feature by chance, all within what the keys allow. */
const randomFlange = (seed: number): Design => {
  const random = seededStream(seed);
  const between = (low: number, high: number): number => low + random() * (high - low);
  const chance = (share: number): boolean => random() < share;
  const [front, half] = [between(670, 760), between(118, 150)];
  const cut = chance(0.5) ? between(10, 40) : 0;
  const outline: [number, number][] =
    cut === 0
      ? [
          [0, -half],
          [front, -half],
          [front, half],
          [0, half],
        ]
      : [
          [0, -half],
          [front - cut, -half],
          [front, -half + cut],
          [front, half - cut],
          [front - cut, half],
          [0, half],
        ];
  const count = 4 + Math.floor(random() * 6);
  const row = Array.from({ length: count }, (_, i) => 20 + ((600 - 20) * i) / (count - 1));
  const y = half - 11;
  const at = between(60, 580);
  const flange: Partial<Flange> = {
    thickness: between(6, 14),
    beyond: chance(0.4) ? between(0, 8) : 0,
    gasket: chance(0.5) ? 'sealant' : 'paper',
    groove: chance(0.4) ? { width: between(2, 5), depth: 2 } : null,
    dowels: chance(0.5) ? [{ at: [between(30, 600), y], size: 8, fit: 'close' }] : [],
    lighten: chance(0.6) ? { land: between(10, 24) } : null,
    split: chance(0.7)
      ? chance(0.6)
        ? { way: 'across', at, joint: chance(0.5) ? 'butt' : 'scarf' }
        : { way: 'lengthwise', at: between(-70, 70), joint: chance(0.5) ? 'butt' : 'scarf' }
      : null,
    endSeals: (['front', 'rear'] as const)
      .filter(() => chance(0.4))
      .map((end) => ({
        end,
        radius: between(66, 80),
        centreAboveRail: 62,
        across: between(-15, 15),
        land: between(6, 12),
        groove: null,
      })),
  };
  return sampleDesign((d) => {
    d.engine.rail.outline = outline;
    d.engine.railHoles = row.flatMap((x) => [
      { at: [x, y] as const, thread: 8 },
      { at: [x, -y] as const, thread: 8 },
    ]);
    Object.assign(d.pan.flange, flange);
    d.pan.flange.drillAfterWeld = chance(0.3) ? d.pan.flange.dowels.map((dowel) => dowel.at) : [];
  });
};

const designs = Array.from({ length: COUNT }, (_, i) => ({
  seed: SEED + i,
  design: randomFlange(SEED + i),
}));

const area = (pieces: readonly { readonly outline: Path; readonly openings: readonly Path[] }[]): number =>
  pieces.reduce((sum, p) => sum + pathArea(p.outline) + p.openings.reduce((s, o) => s + pathArea(o), 0), 0);
const edges = (pieces: readonly { readonly outline: Path; readonly openings: readonly Path[] }[]): number =>
  pieces.reduce((sum, p) => sum + [p.outline, ...p.openings].reduce((s, o) => s + pathLength(o), 0), 0);
const changed = (design: Design, keys: Partial<Flange>): Design => ({
  ...design,
  pan: { ...design.pan, flange: { ...design.pan.flange, ...keys } },
});

test(`two pieces are together the whole, and have the joint's edge twice more (seed ${SEED})`, () => {
  for (const { seed, design: relieved } of designs) {
    // A relief that the joint would cross is left out, so the whole has more of them.
    const design = changed(relieved, { lighten: null });
    const profile = floorProfile(design);
    const pieces = flangePieces(design, profile);
    const whole = flangePieces(changed(design, { split: null }), profile);
    expectWithin(area(pieces) / area(whole), 1, 1e-9, `seed ${seed} area`);
    const joint = pathLength(flangeJoints(design, profile));
    expectWithin(edges(pieces), edges(whole) + 2 * joint, 1e-6, `seed ${seed} edges`);
  }
});

test(`relief leaves its land beside the opening (seed ${SEED})`, () => {
  for (const { seed, design } of designs) {
    const { lighten } = design.pan.flange;
    if (lighten === null) continue;
    const profile = floorProfile(design);
    const rim = flangeRim(design, profile);
    const plain = flangeRim(changed(design, { lighten: null }), profile);
    const reliefs = rim.filter((s) => s.kind === 'arc' && s.sweep < 0);
    for (const s of reliefs)
      expect(pathGap([s], flangeOpening(design, profile)), `seed ${seed}`).toBeGreaterThan(
        lighten.land - 1e-9,
      );
    expect(pathArea(rim), `seed ${seed}`).toBeLessThanOrEqual(pathArea(plain));
  }
});

test(`every hole lies on one plate, cut or marked, or its edge distance fails (seed ${SEED})`, () => {
  let told = 0;
  for (const { seed, design } of designs) {
    const profile = floorProfile(design);
    const parts = flangeParts(design, profile);
    const plates = parts.filter((p) => p.name.startsWith('flange'));
    const found = sheetFindings(design, profile, parts);
    const failed = (id: string): boolean => found.some((f) => f.id === id && f.status === 'fail');
    const on = plates.reduce((sum, p) => sum + p.holes.length + (p.pilots?.length ?? 0), 0);
    const all = design.engine.railHoles.length + design.pan.flange.dowels.length;
    const astray = failed('hole_edge') || failed('joint_hole');
    if (!astray) expect(on, `seed ${seed}`).toBe(all);
    const faults = parts.flatMap((p: Part) => shopFindings(p).filter((f) => f.severity === 'fault'));
    if (faults.length > 0) {
      told++;
      expect(
        astray || failed('flange_rim') || failed('sealing_land') || failed('cut_lines'),
        `seed ${seed} ${faults[0]?.words}`,
      ).toBe(true);
    }
  }
  expect(told).toBeLessThan(COUNT / 3);
});

test(`a mirrored design gives mirrored plates (seed ${SEED})`, () => {
  const mirror = (d: Design): Design => {
    const flip = ([x, y]: readonly [number, number]) => [x, -y] as const;
    const { flange } = d.pan;
    return {
      ...d,
      engine: {
        ...d.engine,
        rail: { ...d.engine.rail, outline: [...d.engine.rail.outline].reverse().map(flip) },
        railHoles: d.engine.railHoles.map((h) => ({ ...h, at: flip(h.at) })),
      },
      pan: {
        ...d.pan,
        left: d.pan.right,
        right: d.pan.left,
        flange: {
          ...flange,
          dowels: flange.dowels.map((dowel) => ({ ...dowel, at: flip(dowel.at) })),
          drillAfterWeld: flange.drillAfterWeld.map(flip),
          split:
            flange.split?.way === 'lengthwise' ? { ...flange.split, at: -flange.split.at } : flange.split,
          endSeals: flange.endSeals.map((seal) => ({ ...seal, across: -seal.across })),
        },
      },
    };
  };
  for (const { seed, design } of designs) {
    const pieces = flangePieces(design, floorProfile(design));
    const twin = mirror(design);
    const others = flangePieces(twin, floorProfile(twin)).map((p) =>
      reversePath(movePath({ mirror: 'y' }, p.outline)),
    );
    expect(others, `seed ${seed}`).toHaveLength(pieces.length);
    for (const { outline, name } of pieces) {
      const near = others.map((other) =>
        Math.max(
          ...outline.map((s) =>
            Math.min(...other.map((t) => Math.hypot(t.from[0] - s.from[0], t.from[1] - s.from[1]))),
          ),
        ),
      );
      expectWithin(Math.min(...near), 0, 1e-9, `seed ${seed} ${name}`);
    }
  }
});
