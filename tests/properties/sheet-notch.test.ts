import type { Notch } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { buildPan, panelsOf } from 'pan-core/pan/index.js';
import { cutParts, shopFindings } from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomFrom } from '../random.js';
import { sampleDesign } from '../sample-design.js';

const SEED = Number(process.env.PAN_SEED ?? 90210);
const COUNT = 60;

type P2 = readonly [number, number];

/** A box or a wedge anywhere about the pan, often over a bend, an edge or a wing. */
const randomNotch = (between: (a: number, b: number) => number): Notch => {
  const [x, y, z] = [between(0, 640), between(-160, 120), between(-190, -30)];
  const [dx, dy, dz] = [between(15, 120), between(15, 200), between(-150, -10)];
  if (between(0, 1) < 0.6) return { kind: 'box', name: 'cut', min: [x, y, z + dz], max: [x + dx, y + dy, z] };
  const corner = (u: number, v: number, du: number): readonly [P2, P2, P2] => [
    [u, v - 100],
    [u + du, v - 100],
    [u + du / 2, v],
  ];
  return between(0, 1) < 0.5
    ? { kind: 'wedge', name: 'cut', along: 'y', triangle: corner(x, z, dx), from: y, to: y + dy }
    : { kind: 'wedge', name: 'cut', along: 'x', triangle: corner(y, z, dy), from: x, to: x + dx };
};

test(`a notch anywhere leaves closed cuts and the cells' own side areas (seed ${SEED})`, () => {
  let made = 0;
  let winged = 0;
  for (let seed = SEED; made < COUNT; seed++) {
    const r = randomFrom(seed);
    const between = (a: number, b: number): number => a + (b - a) * r();
    const design = sampleDesign((d) => {
      d.pan.notches = [randomNotch(between)] as typeof d.pan.notches;
      d.baffles = [];
      d.drain = null;
      d.pan.wings[0]!.topDown = { rear: between(70, 110), front: between(70, 110) };
      d.pan.wings[0]!.topFall = between(-0.05, 0.2);
    });
    try {
      const model = buildPan(design);
      const panels = panelsOf(model);
      const parts = cutParts(design, model.profile, [], panels);
      for (const part of parts) {
        expect(
          shopFindings(part).filter((f) => f.severity === 'fault'),
          `seed ${seed} ${part.name}`,
        ).toEqual([]);
      }
      for (const side of ['left', 'right'] as const) {
        const sheet = parts.filter((p) => p.name.startsWith(`side ${side}`)).reduce((s, p) => s + p.area, 0);
        const cells = panels.filter((p) => p.owner === `side ${side}`).reduce((s, p) => s + p.area, 0);
        // Cells take bends as chords within 0.05 mm: under 1 mm² at each of four.
        expectWithin(sheet, cells, 2.5, `seed ${seed} side ${side}`);
      }
      made++;
      const plain = { ...design, pan: { ...design.pan, notches: [] } };
      const strips = (list: typeof parts): number =>
        list.filter((p) => p.name.startsWith('wing')).reduce((sum, p) => sum + p.area, 0);
      if (strips(cutParts(plain, model.profile, [], [])) - strips(parts) > 1) winged++;
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
  expect(winged).toBeGreaterThan(5);
});
