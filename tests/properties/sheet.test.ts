import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { pathArea, pathLength, pathPoints, pointInPath, polygonArea } from 'pan-core/geometry/index.js';
import { floorProfile, halfWidthAt } from 'pan-core/pan/index.js';
import { type Fold, type Part, shopFindings } from 'pan-core/sheet/index.js';
import { describe, expect, test } from 'vitest';
import { mirrored } from '../mirror-design.js';
import { expectWithin } from '../numbers.js';
import { randomDesign } from '../random-design.js';
import { setImage } from './mirror-image.js';
import { wholeCut } from './sheet-design.js';

const SEED = Number(process.env.PAN_SEED ?? 4107);
const COUNT = 60;

/** Random designs that can be made, with their parts; a random shape may be one that is rightly refused. */
const made: readonly { readonly seed: number; readonly design: Design; readonly parts: readonly Part[] }[] =
  (() => {
    const out: { seed: number; design: Design; parts: readonly Part[] }[] = [];
    for (let seed = SEED; out.length < COUNT; seed++) {
      const design = thick(randomDesign(seed));
      try {
        out.push({ seed, design, parts: wholeCut(design) });
      } catch (error) {
        if (!(error instanceof PanError)) throw error;
      }
    }
    return out;
  })();

/** Random pans come with baffles of no thickness and another rail's holes; a shop gets real ones and a blank. */
function thick(design: Design): Design {
  return {
    ...design,
    engine: { ...design.engine, railHoles: [] },
    baffles: design.baffles.map((b) => ({ ...b, thickness: 2 })),
  };
}

const each = (check: (design: Design, parts: readonly Part[], seed: string) => void): void => {
  for (const { seed, design, parts } of made) check(design, parts, `seed ${seed}`);
};

test(`cut lines close, run the right way and never cross (seed ${SEED})`, () => {
  each((_, parts, seed) => {
    for (const part of parts) {
      expect(
        shopFindings(part).filter((f) => f.severity === 'fault'),
        `${seed} ${part.name}`,
      ).toEqual([]);
    }
  });
});

test(`areas and lengths agree with fine chords (seed ${SEED})`, () => {
  each((_, parts, seed) => {
    for (const part of parts) {
      const loops = [part.outline, ...part.openings];
      const holes = part.holes.reduce((s, h) => s + (Math.PI / 4) * h.diameter ** 2, 0);
      const chords = loops.reduce((s, loop) => s + polygonArea(pathPoints(loop, 1e-4).slice(0, -1)), 0);
      // Chords within 0.1 µm: the area between is under that times the arcs' length.
      expectWithin(part.area, chords - holes, 1e-4 * 400, `${seed} ${part.name}`);
    }
  });
});

/** Walks a strip from its near end, turning at each fold, and tells where it ends. */
const refold = (
  from: readonly [number, number],
  heading: number,
  length: number,
  folds: readonly { at: number; fold: Fold; turn: 1 | -1; rho: number }[],
): readonly [number, number] => {
  let [x, z, h, walked] = [from[0], from[1], heading, 0];
  for (const { at, fold, turn, rho } of [...folds].sort((a, b) => a.at - b.at)) {
    const straight = at - fold.allowance / 2 - walked;
    x += straight * Math.cos(h);
    z += straight * Math.sin(h);
    // The chord of the bend's inside arc.
    const chord = 2 * rho * Math.sin(fold.angle / 2);
    x += chord * Math.cos(h + (turn * fold.angle) / 2);
    z += chord * Math.sin(h + (turn * fold.angle) / 2);
    h += turn * fold.angle;
    walked = at + fold.allowance / 2;
  }
  return [x + (length - walked) * Math.cos(h), z + (length - walked) * Math.sin(h)];
};

const rhoOf = (part: Part, fold: Fold): number =>
  fold.direction === 'up' ? fold.radius : fold.radius + part.thickness;

describe(`refolding (seed ${SEED})`, () => {
  test('the belly, walked from the rear rail, ends at the front rail', () => {
    let walked = 0;
    each((design, parts, seed) => {
      const belly = parts.find((p) => p.name === 'belly');
      if (belly === undefined) return;
      const rear = design.pan.floor[design.pan.floor.length - 1]![0];
      const front = design.pan.floor[0]![0];
      const folds = belly.folds.map((fold) => ({
        at: fold.from[0],
        fold,
        turn: fold.direction === 'up' ? (1 as const) : (-1 as const),
        rho: rhoOf(belly, fold),
      }));
      const end = refold([rear, 0], -Math.PI / 2, belly.flat[0], folds);
      expectWithin(end[0], front, 1e-6, `${seed} x`);
      expectWithin(end[1], 0, 1e-6, `${seed} z`);
      walked++;
    });
    expect(walked).toBeGreaterThan(COUNT / 4);
  });

  test('a folded side plate, walked along the rail, ends at the pan’s front corner', () => {
    let walked = 0;
    each((design, parts, seed) => {
      const plate = parts.find((p) => p.name === 'side left');
      if (plate === undefined || plate.folds.length === 0) return;
      const [rear, front] = [design.pan.floor[design.pan.floor.length - 1]![0], design.pan.floor[0]![0]];
      const rows = design.pan.left;
      const first = Math.atan2(rows[1]![1] - rows[0]![1], rows[1]![0] - rows[0]![0]);
      const folds = plate.folds.map((fold) => ({
        at: fold.from[0],
        fold,
        // Walking forward along the left wall the oil is on the right hand.
        turn: fold.direction === 'up' ? (-1 as const) : (1 as const),
        rho: rhoOf(plate, fold),
      }));
      const end = refold([rear, halfWidthAt(rows, rear)], first, plate.flat[0], folds);
      expectWithin(end[0], front, 1e-6, `${seed} x`);
      expectWithin(end[1], halfWidthAt(rows, front), 1e-6, `${seed} y`);
      walked++;
    });
    expect(walked).toBeGreaterThan(5);
  });
});

test(`a straight side plate’s foot is as long as the profile (seed ${SEED})`, () => {
  let seen = 0;
  each((design, parts, seed) => {
    const level = design.pan.left.every((row) => row[1] === design.pan.left[0]![1]);
    const plain = design.pan.notches.length === 0 && design.pan.wings.every((w) => w.side === 'right');
    const plate = parts.find((p) => p.name === 'side left');
    if (!level || !plain || plate === undefined) return;
    const profile = pathLength(floorProfile(design).path);
    expectWithin(plate.cutLength - plate.flat[0], profile, 1e-9, seed);
    seen++;
  });
  expect(seen).toBeGreaterThan(5);
});

test(`the belly’s ends are as wide as the pan, and of even width its area is length by width (seed ${SEED})`, () => {
  each((design, parts, seed) => {
    const belly = parts.find((p) => p.name === 'belly');
    if (belly === undefined || design.pan.notches.length > 0) return;
    const width = (x: number): number => halfWidthAt(design.pan.left, x) + halfWidthAt(design.pan.right, x);
    const ends = [design.pan.floor[design.pan.floor.length - 1]![0], design.pan.floor[0]![0]];
    ends.forEach((x, i) => {
      const edge = belly.outline.find((s) =>
        [s.from, s.to].every((p) => Math.abs(p[0] - (i === 0 ? 0 : belly.flat[0])) < 1e-9),
      );
      expectWithin(edge === undefined ? Number.NaN : pathLength([edge]), width(x), 1e-9, `${seed} end ${i}`);
    });
    if (new Set([...design.pan.left, ...design.pan.right].map((r) => r[1])).size > 1) return;
    const holes = belly.holes.reduce((s, h) => s + (Math.PI / 4) * h.diameter ** 2, 0);
    expectWithin(belly.area + holes, belly.flat[0] * width(0), 1e-7, seed);
  });
});

test(`a mirrored design gives mirrored parts: cuts, holes and folds (seed ${SEED})`, () => {
  let handed = 0;
  each((design, parts, seed) => {
    const image = setImage(parts, wholeCut(mirrored(design)));
    expectWithin(image.worst, 0, 1e-6, seed);
    handed += image.handed;
  });
  // Without parts that differ from their own image the mirror would show nothing.
  expect(handed).toBeGreaterThan(2 * COUNT);
});

test(`folds run from edge to edge inside their part (seed ${SEED})`, () => {
  each((_, parts, seed) => {
    for (const part of parts)
      for (const fold of part.folds) {
        const mid = [(fold.from[0] + fold.to[0]) / 2, (fold.from[1] + fold.to[1]) / 2] as const;
        const inMetal =
          pointInPath(part.outline, mid) === 'inside' ||
          // A notch may take the middle out of a fold.
          part.openings.length > 0;
        expect(inMetal, `${seed} ${part.name} ${fold.name}`).toBe(true);
        for (const end of [fold.from, fold.to]) {
          expect(pointInPath(part.outline, end), `${seed} ${part.name} ${fold.name}`).not.toBe('outside');
        }
      }
  });
});

test(`moving the whole pan along x changes no part but the flange (seed ${SEED})`, () => {
  const shifted = (d: Design, dx: number): Design => ({
    ...d,
    engine: {
      ...d.engine,
      rail: { ...d.engine.rail, outline: d.engine.rail.outline.map(([x, y]) => [x + dx, y] as const) },
      railHoles: d.engine.railHoles.map((h) => ({ ...h, at: [h.at[0] + dx, h.at[1]] as const })),
    },
    pan: {
      ...d.pan,
      floor: d.pan.floor.map(([x, down]) => [x + dx, down] as const),
      left: d.pan.left.map(([x, w]) => [x + dx, w] as const),
      right: d.pan.right.map(([x, w]) => [x + dx, w] as const),
      wings: d.pan.wings.map((w) => ({ ...w, rear: w.rear + dx, front: w.front + dx })),
      notches: [],
    },
    pickup: { ...d.pickup, at: [d.pickup.at[0] + dx, d.pickup.at[1]] as const },
    baffles: [],
  });
  each((design, _, seed) => {
    const [here, there] = [wholeCut(shifted(design, 0)), wholeCut(shifted(design, 137.25))];
    here.forEach((part, i) => {
      expectWithin(there[i]!.area, part.area, 1e-6, `${seed} ${part.name}`);
      expectWithin(pathArea(there[i]!.outline), pathArea(part.outline), 1e-6, `${seed} ${part.name}`);
    });
  });
});
