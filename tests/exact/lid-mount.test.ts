import type { Design, Lid } from 'pan-core/design/index.js';
import { meshVolume, partsInPlace } from 'pan-core/drawing/index.js';
import { buildPan, platesOf } from 'pan-core/pan/index.js';
import { panSeams, panSkin } from 'pan-core/weld/index.js';
import { describe, expect, test } from 'vitest';
import { check, deg, finding, partNamed, partsOf, tray, withLids } from '../lid-trial.js';
import { expectWithin } from '../numbers.js';
import { type Mutable, sampleDesign } from '../sample-design.js';

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
