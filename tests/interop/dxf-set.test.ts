import { pathArea, pathCrossings, pathLength, selfCrossings } from 'pan-core/geometry/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { partsOf, setOf, textAt } from './dxf-cut-set.js';
import { loopOf } from './dxf-loops.js';
import { hasReader, MISSING_READER, readDrawings } from './dxf-reader.js';
import { pans } from './stl-pans.js';

const reader = hasReader();
const PROVE = 'Prove a mock-up on block and car first; check the 100 mm square';
const SOLVENT = 'Never chlorinated cleaner near an arc; clean and vent';

interface Manifest {
  readonly parts: readonly {
    readonly name: string;
    readonly file: string;
    readonly bare_file: string;
    readonly area_mm2: number;
    readonly cut_length_mm: number;
    readonly flat_mm: readonly [number, number];
    readonly bends: readonly unknown[];
  }[];
}

describe.each(pans)('the cut set of %s, read back by Debian python3-ezdxf', (_, design) => {
  const load = async () => {
    const files = await setOf(design, 'fail', 'pass');
    const manifest = JSON.parse(textAt(files, 'manifest.json')) as Manifest;
    const full = readDrawings(manifest.parts.map((part) => textAt(files, part.file)));
    const bare = readDrawings(manifest.parts.map((part) => textAt(files, part.bare_file)));
    return manifest.parts.map((part, i) => ({ part, full: full[i]!, bare: bare[i]! }));
  };
  const drawn = reader ? load() : null;

  it('needs no fix and has no error in any drawing', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    for (const { part, full, bare } of await drawn) {
      for (const drawing of [full, bare]) {
        expect(drawing.errors, part.name).toEqual([]);
        expect(drawing.fixes, part.name).toEqual([]);
      }
    }
  });

  it('has closed loops that neither cross nor touch, the same in the bare drawing and nothing else there', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    for (const { part, full, bare } of await drawn) {
      const cuts = full.entities.filter((e) => e.layer === 'through');
      expect(bare.entities).toEqual(cuts);
      for (const cut of cuts) expect(cut.type === 'CIRCLE' || cut.closed, part.name).toBe(true);
      const loops = cuts.map(loopOf);
      loops.forEach((loop, i) => {
        if (cuts[i]?.type !== 'CIRCLE') expect(selfCrossings(loop), part.name).toEqual([]);
        for (const other of loops.slice(i + 1)) expect(pathCrossings(loop, other), part.name).toEqual([]);
      });
      expect(full.entities.every((e) => e.layer === 'note' || e.type !== 'TEXT')).toBe(true);
    }
  });

  it('has the area and cut length that the manifest says, and every fold as a line', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    for (const { part, full } of await drawn) {
      const loops = full.entities.filter((e) => e.layer === 'through').map(loopOf);
      const areas = loops.map((loop) => Math.abs(pathArea(loop))).sort((a, b) => b - a);
      const net = areas.slice(1).reduce((sum, a) => sum - a, areas[0] ?? 0);
      // Coordinates are written to 1e-9 mm and bulges to 1e-12.
      expectWithin(net, part.area_mm2, 1e-4, `${part.name} area, mm²`);
      const length = loops.reduce((sum, loop) => sum + pathLength(loop), 0);
      expectWithin(length, part.cut_length_mm, 1e-4, `${part.name} cut, mm`);
      expect(full.entities.filter((e) => e.layer === 'fold' && e.type === 'LINE')).toHaveLength(
        part.bends.length,
      );
    }
  });

  it('keeps every arc of the parts', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    const parts = partsOf(design);
    (await drawn).forEach(({ full, part }, i) => {
      const source = parts[i];
      const arcs = [source?.outline ?? [], ...(source?.openings ?? [])]
        .flat()
        .filter((s) => s.kind === 'arc');
      const bulges = full.entities
        .filter((e) => e.layer === 'through' && e.type === 'LWPOLYLINE')
        .flatMap((e) => e.points ?? [])
        .filter((p) => p[2] !== 0);
      expect(bulges.length, part.name).toBe(
        arcs.reduce((sum, a) => sum + (Math.abs(a.sweep) > Math.PI ? 2 : 1), 0),
      );
    });
  });

  it('says on every part that it is not ready, to prove a mock-up, and the cautions', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    for (const { part, full } of await drawn) {
      const words = full.entities.map((e) => e.text ?? '');
      expect(
        words.some((w) => w.startsWith('NOT READY TO CUT: fail_0')),
        part.name,
      ).toBe(true);
      expect(
        words.some((w) => w.includes(PROVE)),
        part.name,
      ).toBe(true);
      expect(
        words.some((w) => w.includes(SOLVENT)),
        part.name,
      ).toBe(true);
    }
  });

  it('keeps words and check square clear of the part', async (ctx) => {
    if (drawn === null) return ctx.skip(MISSING_READER);
    for (const { part, full } of await drawn) {
      const outline = full.entities.filter((e) => e.layer === 'through').flatMap((e) => e.points ?? []);
      const foot = Math.min(...outline.map((p) => p[1]));
      const square = full.entities.find((e) => e.layer === 'mark' && e.closed && isSquare(e.points ?? []));
      expect(Math.max(...(square?.points ?? []).map((p) => p[1])), part.name).toBeLessThan(foot - 5);
      const notes = full.entities.filter((e) => e.type === 'TEXT' && !e.centred);
      for (const note of notes)
        expect((note.at?.[1] ?? 0) + (note.height ?? 0), part.name).toBeLessThan(foot);
    }
  });
});

const isSquare = (points: readonly (readonly [number, number, number])[]): boolean => {
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const wide = Math.max(...xs) - Math.min(...xs);
  const high = Math.max(...ys) - Math.min(...ys);
  return points.length === 4 && Math.abs(wide - 100) < 1e-9 && Math.abs(high - 100) < 1e-9;
};
