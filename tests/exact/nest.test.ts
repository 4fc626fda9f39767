import { nestParts } from 'pan-core/drawing/nest/nest.js';
import { remnantsOf } from 'pan-core/drawing/nest/nest-group.js';
import type { SheetSize } from 'pan-core/drawing/nest/sheet-size.js';
import {
  circlePath,
  movePath,
  type Path,
  pathBox,
  pathGap,
  pointInPath,
  polylinePath,
} from 'pan-core/geometry/index.js';
import type { Vec2 } from 'pan-core/numeric/index.js';
import type { Part } from 'pan-core/sheet/index.js';
import { describe, expect, it } from 'vitest';
import { partsOf } from '../interop/dxf-cut-set.js';
import { boxShare, flatPart, partSet } from '../nest-sets.js';
import { expectWithin } from '../numbers.js';
import { sampleDesign } from '../sample-design.js';
import { shelfArea } from '../shelf-nest.js';

const SHEET: SheetSize = { length: 2500, width: 1250, edge: 10, gap: 5 };
const square = (side: number): Path =>
  polylinePath(
    [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
    ],
    true,
  );

interface Placed {
  readonly part: Part;
  readonly loops: readonly Path[];
  readonly folds: readonly (readonly [Vec2, Vec2])[];
}

const laidOut = async (parts: readonly Part[], sheet: SheetSize) => {
  const nest = await nestParts(parts, sheet);
  const sheets = nest.sheets.map(({ places, used }) => ({
    used,
    pieces: places.map(({ part: n, turn, shift }): Placed => {
      const part = parts[n]!;
      const move = { turn, shift };
      return {
        part,
        loops: [part.outline, ...part.openings].map((path) => movePath(move, path)),
        folds: part.folds.map((fold) => {
          const [line] = movePath(move, [{ kind: 'line', from: fold.from, to: fold.to }]);
          return [line!.from, line!.to] as const;
        }),
      };
    }),
  }));
  return { nest, sheets };
};

/** What is wrong with a layout, by the parts' own lines and arcs and not by what the search used. */
const faults = (pieces: readonly Placed[], used: Vec2, { edge, gap }: SheetSize): readonly string[] => {
  const found: string[] = [];
  pieces.forEach((a, i) => {
    const { min, max } = pathBox(a.loops[0]!);
    const rim = Math.min(min[0], min[1], used[0] - max[0], used[1] - max[1]);
    if (rim < edge - 0.011) found.push(`${a.part.name} is ${rim} mm from an edge`);
    for (const [p, q] of a.folds)
      if (Math.abs(p[0] - q[0]) > Math.abs(p[1] - q[1])) found.push(`${a.part.name} folds along the grain`);
    for (const b of pieces.slice(i + 1)) {
      const away = Math.min(...a.loops.flatMap((p) => b.loops.map((q) => pathGap(p, q))));
      if (away < gap - 0.021) found.push(`${a.part.name} and ${b.part.name} are ${away} mm apart`);
      const inMetal = (outer: Placed, inner: Placed): boolean => {
        const at = inner.loops[0]![0]!.from;
        const [outline, ...openings] = outer.loops;
        return (
          pointInPath(outline!, at) === 'inside' && openings.every((o) => pointInPath(o, at) === 'outside')
        );
      };
      if (inMetal(a, b) || inMetal(b, a)) found.push(`${a.part.name} and ${b.part.name} overlap`);
    }
  });
  return found;
};

const counted = (pieces: readonly Placed[], parts: readonly Part[]): readonly number[] =>
  parts.map((part) => pieces.filter((piece) => piece.part === part).length);

describe('parts laid out on sheets', () => {
  // Places are whole hundredths of a mm.
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'keep their distance, the rim and the grain, every part of set %d once for each wanted',
    async (seed) => {
      const parts = partSet(seed);
      const { sheets } = await laidOut(parts, SHEET);
      for (const { pieces, used } of sheets) expect(faults(pieces, used, SHEET)).toEqual([]);
      expect(
        counted(
          sheets.flatMap((sheet) => sheet.pieces),
          parts,
        ),
      ).toEqual(parts.map((part) => part.quantity));
    },
  );

  it('use less than boxes on shelves, and than the same search with boxes: the sample pan and ten sets', async () => {
    const sample = partsOf(sampleDesign()).filter((part) => part.thickness === 3);
    const saved: number[] = [];
    for (const parts of [sample, ...[9, 10, 11, 12, 13, 14, 15, 16, 17, 18].map((seed) => partSet(seed))]) {
      const nest = await nestParts(parts, SHEET);
      expect(nest.usedArea).toBeLessThanOrEqual(nest.boxArea);
      expect(nest.usedArea).toBeLessThanOrEqual(shelfArea(parts, SHEET) ?? Number.POSITIVE_INFINITY);
      if (boxShare(parts) <= 0.8) saved.push(1 - nest.usedArea / nest.boxArea);
    }
    expect(saved.length).toBeGreaterThan(7);
    expect(saved.reduce((sum, share) => sum + share, 0) / saved.length).toBeGreaterThan(0.15);
  });

  it('are the same layout every time', async () => {
    expect(await nestParts(partSet(8), SHEET)).toEqual(await nestParts(partSet(8), SHEET));
  });

  it('fill a sheet to its rim, and go on to the next', async () => {
    // 3 × 2 squares of 100 with 5 between and 10 round: 330 × 225.
    const small: SheetSize = { length: 330, width: 225, edge: 10, gap: 5 };
    const parts = [flatPart('square', [square(100), []], 8, false)];
    const { sheets } = await laidOut(parts, small);
    expect(sheets.map((sheet) => sheet.pieces.length)).toEqual([6, 2]);
    for (const { pieces, used } of sheets) expect(faults(pieces, used, small)).toEqual([]);
    expectWithin(sheets[0]!.used[0] * sheets[0]!.used[1], 330 * 225, 1e-6, 'used, mm²');
  });

  it('put a small part into a large one’s opening', async () => {
    const hole = [...square(180)].reverse().map((s) => ({ ...s, from: s.to, to: s.from }));
    const ring = flatPart('ring', [square(200), [movePath({ shift: [10, 10] }, hole)]], 1, false);
    const disc = flatPart('disc', [circlePath([80, 80], 80), []], 1, false);
    const { sheets, nest } = await laidOut([ring, disc], SHEET);
    expectWithin(nest.usedArea, 220 * 220, 1e-6, 'used, mm²');
    expect(faults(sheets[0]!.pieces, sheets[0]!.used, SHEET)).toEqual([]);
  });

  it('keep off the metal between a large part’s edge and its small opening', async () => {
    const opening = [...square(30)].reverse().map((s) => ({ ...s, from: s.to, to: s.from }));
    const plate = flatPart('plate', [square(300), [movePath({ shift: [140, 140] }, opening)]], 1, false);
    const small = flatPart('small', [square(24), []], 4, false);
    const { sheets } = await laidOut([plate, small], SHEET);
    expect(faults(sheets[0]!.pieces, sheets[0]!.used, SHEET)).toEqual([]);
  });

  it('name what no sheet holds, folds’ direction counted', async () => {
    const small: SheetSize = { length: 330, width: 225, edge: 10, gap: 5 };
    const strip = polylinePath(
      [
        [0, 0],
        [205, 0],
        [205, 300],
        [0, 300],
      ],
      true,
    );
    const free = flatPart('strip', [strip, []], 1, false);
    const folded = flatPart('folded strip', [strip, []], 1, true);
    const large = flatPart('large', [square(310), []], 1, false);
    expect((await nestParts([free, folded, large], small)).tooLarge).toEqual([1, 2]);
  });
});

describe('what two straight cuts leave', () => {
  it.each([
    [
      [900, 700],
      [
        [1600, 1250],
        [900, 550],
      ],
    ],
    [
      [2400, 700],
      [
        [2500, 550],
        [100, 700],
      ],
    ],
    [[2480, 1230], []],
  ] as const)('of 2500 × 1250 less %j: %j', (used, left) => expect(remnantsOf(SHEET, used)).toEqual(left));
});
