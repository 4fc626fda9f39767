import { PanError } from 'pan-core/errors/index.js';
import { buildPan, type Owner, type Panel, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part } from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { randomDesign } from '../random-design.js';

const SEED = Number(process.env.PAN_SEED ?? 611);
const COUNT = 80;

/**
 * The cells know the pan's inside faces by another way: half-spaces cut from half-spaces, bends as chords
 * within 0.05 mm. What is cut from sheet must have the same inside area.
 */
test(`side plates have the area of the cells' own side faces (seed ${SEED})`, () => {
  let [seen, winged, notched] = [0, 0, 0];
  for (let seed = SEED; seen < COUNT; seed++) {
    const design = randomDesign(seed);
    try {
      const model = buildPan(design);
      const panels = panelsOf(model);
      const parts = cutParts({ ...design, baffles: [] }, model.profile, platesOf(model), panels);
      for (const side of ['left', 'right'] as const) {
        const rows = design.pan[side];
        // A folded plate loses 2·tan(θ/2)·ρ − BA of its length at each upright bend; compare flat ones.
        if (parts.some((p) => p.name.startsWith(`side ${side}`) && p.folds.length > 0) || rows.length > 2)
          continue;
        const owner: Owner = side === 'left' ? 'side left' : 'side right';
        const [sheet, cells] = [areaOf(parts, `side ${side}`), panelArea(panels, owner)];
        // Two thirds of the chords' 0.05 mm along no more than 60 mm of bends, on a slanting wall a little more.
        expectWithin(sheet, cells, 2.5, `seed ${seed} ${side}`);
        seen++;
        if (design.pan.wings.some((w) => w.side === side)) winged++;
        if (design.pan.notches.length > 0 && side === 'left') notched++;
      }
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
  expect(winged).toBeGreaterThan(5);
  expect(notched).toBeGreaterThan(5);
});

test(`each notch plate is its panel, less what butts against another (seed ${SEED})`, () => {
  let seen = 0;
  for (let seed = SEED; seen < 10; seed++) {
    const design = randomDesign(seed);
    if (design.pan.notches.length === 0) continue;
    try {
      const model = buildPan(design);
      const panels = panelsOf(model).filter((p) => p.owner === 'notch');
      const parts = cutParts(design, model.profile, [], panels).filter((p) => p.name.startsWith('notch'));
      expect(parts.length, `seed ${seed}`).toBe(panels.length);
      panels.forEach((panel, i) => {
        const part = parts[i]!;
        const whole = part.notes.length === 1;
        expect(part.area, `seed ${seed} ${part.name}`).toBeLessThanOrEqual(panel.area + 1e-6);
        if (whole) expectWithin(part.area, panel.area, 1e-6, `seed ${seed} ${part.name}`);
        else expect(part.area, `seed ${seed} ${part.name}`).toBeGreaterThan(panel.area * 0.3);
      });
      seen++;
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
});

test(`the belly has the area of the cells' own belly faces and what its bends add (seed ${SEED})`, () => {
  let [seen, notched] = [0, 0];
  for (let seed = SEED; seen < 40; seed++) {
    const design = randomDesign(seed);
    const widths = [...design.pan.left, ...design.pan.right].map((r) => r[1]);
    const even = widths.every((w) => w === widths[0]);
    if (!even) continue;
    try {
      const model = buildPan(design);
      const panels = panelsOf(model);
      const parts = cutParts({ ...design, baffles: [] }, model.profile, [], panels);
      const bellies = parts.filter((p) => p.name.startsWith('belly'));
      const width = 2 * widths[0]!;
      // Where a bend is as long flat as its inside arc nothing changes; the rest is width by the difference.
      const bends = bellies.flatMap((p) =>
        p.folds.map(
          (f) => f.allowance - f.angle * (f.direction === 'up' ? f.radius : f.radius + p.thickness),
        ),
      );
      const trimmed = design.pan.joints.welded.length > 0 ? lipTrim(design) * width : 0;
      const grown = bends.reduce((s, b) => s + b, 0) * width - trimmed;
      const sheet = areaOf(parts, 'belly');
      // Chords are shorter than their arcs by some 8/3·0.05²/length each: 0.02 mm by the width at most.
      expectWithin(sheet - grown, panelArea(panels, 'belly'), 0.1 * width, `seed ${seed}`);
      seen++;
      if (design.pan.notches.length > 0) notched++;
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
  expect(notched).toBeGreaterThan(3);
});

/** At a welded lip the steeper plate stops short of the other's outside. */
const lipTrim = (design: ReturnType<typeof randomDesign>): number => {
  const [a, b, c] = [design.pan.floor[0]!, design.pan.floor[1]!, design.pan.floor[2]!];
  const into = Math.atan2(b[1] - a[1], a[0] - b[0]);
  const down = Math.atan2(c[1] - b[1], b[0] - c[0]);
  const metal = Math.PI - (down - into);
  const { thickness } = design.pan.sheet;
  return thickness / Math.sin(metal) + Math.max(0, thickness / Math.tan(metal));
};

const areaOf = (parts: readonly Part[], start: string): number =>
  parts
    .filter((p) => p.name.startsWith(start))
    .reduce((s, p) => s + p.area + p.holes.reduce((h, hole) => h + (Math.PI / 4) * hole.diameter ** 2, 0), 0);

const panelArea = (panels: readonly Panel[], owner: Owner): number =>
  panels.filter((p) => p.owner === owner).reduce((s, p) => s + p.area, 0);
