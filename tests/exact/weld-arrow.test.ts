import type { Design } from 'pan-core/design/index.js';
import { seamPlace } from 'pan-core/drawing/bench/seam-place.js';
import { shopView } from 'pan-core/drawing/bench/shop-view.js';
import { wordBox } from 'pan-core/drawing/page/label-room.js';
import type { PageItem, Words } from 'pan-core/drawing/page/page.js';
import { pathBox } from 'pan-core/geometry/index.js';
import { buildPan, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part } from 'pan-core/sheet/index.js';
import { panSeams, panSkin, processNumbers, type Seam } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';

const made = (design: Design): { readonly parts: readonly Part[]; readonly seams: readonly Seam[] } => {
  const model = buildPan(design);
  const parts = cutParts(design, model.profile, platesOf(model), panelsOf(model));
  return { parts, seams: panSeams(model, panSkin(model), parts) };
};

const { parts, seams } = made(sampleDesign());
const partNamed = (name: string): Part => parts.find((part) => part.name === name)!;
const seamNamed = (name: string): Seam => seams.find((seam) => seam.name === name)!;
const placeOf = (part: string, seam: string) => seamPlace(partNamed(part), seamNamed(seam))!;

describe('the place of a seam on a part', () => {
  const belly = partNamed('belly');
  const [low, high] = [pathBox(belly.outline).min[1], pathBox(belly.outline).max[1]];

  it('lies on the belly’s edges, left of the car at the top', () => {
    expectWithin(placeOf('belly', 'belly to side left')[1], high, 1e-9, 'left');
    expectWithin(placeOf('belly', 'belly to side right')[1], low, 1e-9, 'right');
  });

  it('is the drain’s rim', () => {
    const drain = belly.holes.find(({ bung }) => bung === 'the drain')!;
    const [x, y] = placeOf('belly', 'drain bung to the pan');
    expectWithin(Math.hypot(x - drain.at[0], y - drain.at[1]), drain.diameter / 2, 0.1, 'rim, chords');
  });

  it('is the flange’s opening, which the sheet passes through', () => {
    const flange = partNamed('flange');
    const [x, y] = placeOf('flange', 'flange to pan, below');
    const { min, max } = pathBox(flange.openings[0]!);
    const off = Math.min(...[x - min[0], max[0] - x, y - min[1], max[1] - y].map(Math.abs));
    expectWithin(off, 0, 1e-9, 'off the edge');
  });

  it('is none on a part that the seam does not touch: a wall stands clear of the floor by its weep', () => {
    const wall = seams.find(({ name }) => name.endsWith('wall to the pan'))!;
    expect(wall.lines.length).toBeGreaterThan(0);
    expect(seamPlace(belly, wall)).toBeNull();
    expect(seamPlace(partNamed('lid'), seamNamed('belly to side left'))).toBeNull();
  });
});

describe('symbols on a view', () => {
  const room = { min: [10, 10], max: [210, 160] } as const;
  const tails = (items: readonly PageItem[]): readonly Words[] =>
    items.filter((item): item is Words => item.kind === 'words' && /^S\d+$/.test(item.text));

  it('carry the seam’s number in the tail, one for each seam, and cover no other words', () => {
    for (const part of parts) {
      const own = seams.filter((seam) => seam.between.includes(part.name));
      const { items, missing } = shopView(part, own, room);
      const found = tails(items).map(({ text }) => Number(text.slice(1)));
      expect([...found, ...missing].sort((a, b) => a - b)).toEqual(own.map(({ number }) => number));
      const boxes = items.filter((item): item is Words => item.kind === 'words').map(wordBox);
      for (const tail of tails(items)) {
        const box = wordBox(tail);
        const over = boxes.filter(
          (other) =>
            box.min[0] < other.max[0] &&
            other.min[0] < box.max[0] &&
            box.min[1] < other.max[1] &&
            other.min[1] < box.max[1],
        );
        // Itself.
        expect(over, `${part.name}, ${tail.text}`).toHaveLength(1);
      }
    }
  });

  it('hang from the broken line when the weld is on the face that is not drawn', () => {
    const part = partNamed('belly');
    const outside = seamNamed('belly to side left');
    const below = (seam: Seam): boolean => {
      const { items } = shopView(part, [seam], room);
      const size = items.find((item): item is Words => item.kind === 'words' && /^[sz]\d/.test(item.text))!;
      return size.at[1] < tails(items)[0]!.at[1];
    };
    expect(below(outside)).toBe(true);
    expect(below({ ...outside, side: 'inside' })).toBe(false);
  });

  it('number seams in the order of welding', () => {
    expect(seams.map(({ number }) => number)).toEqual(seams.map((_, i) => i + 1));
    // ISO 4063, from memory.
    expect(processNumbers('aluminium 5052-H32')).toMatchObject({ TIG: '141', MIG: '131' });
    expect(processNumbers('something else')).toBeNull();
  });
});
