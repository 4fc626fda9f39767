import { pathArea } from 'pan-core/geometry/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { setOf, textAt } from './dxf-cut-set.js';
import { loopOf } from './dxf-loops.js';
import { hasReader, MISSING_READER, readDrawings } from './dxf-reader.js';
import { pans } from './stl-pans.js';

interface Manifest {
  readonly parts: readonly {
    readonly name: string;
    readonly quantity: number;
    readonly area_mm2: number;
  }[];
  readonly nests: readonly {
    readonly file: string;
    readonly bare_file: string;
    readonly sheet_mm: readonly [number, number];
    readonly used_mm: readonly [number, number];
    readonly places: readonly { readonly part: string }[];
  }[];
}

describe.each(pans)('sheets of %s, read back by Debian python3-ezdxf', (_, design) => {
  const load = async () => {
    const files = await setOf(design, 'pass');
    const { parts, nests } = JSON.parse(textAt(files, 'manifest.json')) as Manifest;
    const full = readDrawings(nests.map((nest) => textAt(files, nest.file)));
    const bare = readDrawings(nests.map((nest) => textAt(files, nest.bare_file)));
    return { parts, sheets: nests.map((nest, i) => ({ nest, full: full[i]!, bare: bare[i]! })) };
  };
  const drawn = hasReader() ? load() : null;

  it('need no fix and have no error, and the bare ones hold the cut loops alone', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    for (const { full, bare, nest } of (await drawn).sheets) {
      for (const drawing of [full, bare])
        expect([...drawing.errors, ...drawing.fixes], nest.file).toEqual([]);
      expect(bare.entities).toEqual(full.entities.filter((e) => e.layer === 'through'));
    }
  });

  it('hold every part as often as it is wanted, with its area, inside the corner that they use', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    const { parts, sheets } = await drawn;
    for (const part of parts) {
      const found = sheets.flatMap(({ nest }) => nest.places).filter((place) => place.part === part.name);
      expect(found.length, part.name).toBe(part.quantity);
    }
    for (const { nest, bare } of sheets) {
      const wanted = nest.places.reduce(
        (sum, place) => sum + (parts.find((part) => part.name === place.part)?.area_mm2 ?? Number.NaN),
        0,
      );
      const net = netArea(bare.entities.map(loopOf));
      expectWithin(net, wanted, 1e-3, `${nest.file}, mm²`);
      const points = bare.entities.flatMap((e) => e.points ?? []);
      expect(Math.max(...points.map((p) => p[0]))).toBeLessThanOrEqual(nest.used_mm[0]);
      expect(Math.max(...points.map((p) => p[1]))).toBeLessThanOrEqual(nest.used_mm[1]);
      expect(Math.min(...points.flatMap((p) => [p[0], p[1]]))).toBeGreaterThanOrEqual(9.98);
    }
  });
});

/** Metal between loops: a loop within an odd number of others is a hole. */
const netArea = (loops: readonly ReturnType<typeof loopOf>[]): number =>
  loops.reduce((sum, loop) => {
    const around = loops.filter((other) => other !== loop && holds(other, loop[0]!.from)).length;
    return sum + (around % 2 === 0 ? 1 : -1) * Math.abs(pathArea(loop));
  }, 0);

/** Even–odd rule on the corners and arcs' middles. */
const holds = (loop: ReturnType<typeof loopOf>, [x, y]: readonly [number, number]): boolean => {
  const points = loop.flatMap((s) => {
    if (s.kind === 'line') return [s.from];
    const n = 64;
    const start = Math.atan2(s.from[1] - s.centre[1], s.from[0] - s.centre[0]);
    return Array.from({ length: n }, (_, i) => {
      const a = start + (s.sweep * i) / n;
      return [s.centre[0] + s.radius * Math.cos(a), s.centre[1] + s.radius * Math.sin(a)] as const;
    });
  });
  return points.reduce((odd, p, i) => {
    const q = points[(i + points.length - 1) % points.length]!;
    const crosses = p[1] > y !== q[1] > y && x < p[0] + ((y - p[1]) * (q[0] - p[0])) / (q[1] - p[1]);
    return odd !== crosses;
  }, false);
};
