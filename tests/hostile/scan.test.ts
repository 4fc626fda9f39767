import { spawnSync } from 'node:child_process';
import { closeSync, ftruncateSync, mkdirSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readDesignFile } from 'pan-cli/read/index.js';
import { PanError, type Problem, stlReader } from 'pan-core';
import { afterAll, describe, expect, test } from 'vitest';
import { exampleText } from '../design-text.js';
import { boxTriangles, stlBytes } from '../scan-of.js';

const folder = mkdtempSync(join(tmpdir(), 'pan-hostile-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const box = boxTriangles([400, -300, -200], [480, 300, -120]);
const good = stlBytes(box);
const text = (change: (s: string) => string = (s) => s): Uint8Array =>
  new TextEncoder().encode(
    change(
      `solid a name\n${box
        .map(
          (t) =>
            `facet normal 0 0 0\n outer loop\n${t.map((p) => `  vertex ${p.join(' ')}\n`).join('')} endloop\nendfacet\n`,
        )
        .join('')}endsolid a name\n`,
    ),
  );

const withFloat = (at: number, value: number): Uint8Array => {
  const bytes = good.slice();
  new DataView(bytes.buffer).setFloat32(at, value, true);
  return bytes;
};

/** Hands the bytes over in pieces of a size. */
const corners = (bytes: Uint8Array, piece = 1 << 20): Float32Array => {
  const reader = stlReader(bytes.length);
  for (let at = 0; at < bytes.length; at += piece) reader.take(bytes.subarray(at, at + piece));
  return reader.finish().corners;
};

const refusal = (work: () => unknown): Problem => {
  try {
    work();
  } catch (error) {
    if (error instanceof PanError) return error.problems[0]!;
    throw error;
  }
  throw new Error('nothing was refused');
};

describe('an STL file in order', () => {
  test.each([1, 3, 7, 49, 50, 51, 84, 133, 1 << 20])('in pieces of %i bytes', (piece) => {
    expect(corners(good, piece)).toEqual(Float32Array.from(box.flat(2)));
    expect(corners(text(), piece)).toEqual(Float32Array.from(box.flat(2)));
  });
  test('that begins with the word solid and is binary', () => {
    const bytes = good.slice();
    bytes.set(new TextEncoder().encode('solid exported by something'));
    expect(corners(bytes)).toEqual(Float32Array.from(box.flat(2)));
  });
  test('with normals that are not numbers, Windows line ends, capitals and two solids', () => {
    expect(corners(withFloat(84, Number.NaN))).toEqual(Float32Array.from(box.flat(2)));
    expect(corners(text((s) => (s + s).replaceAll('\n', '\r\n').toUpperCase()))).toHaveLength(2 * 108);
    expect(corners(text((s) => s.replaceAll('400', '4.0E+2')))).toEqual(Float32Array.from(box.flat(2)));
  });
});

describe('an STL file that is refused', () => {
  const lying = stlBytes(box, 4_000_000_000);
  test.each<[string, Uint8Array, RegExp]>([
    ['nothing in it', new Uint8Array(0), /is empty/],
    ['a few bytes', new Uint8Array(30).fill(7), /not an STL/],
    ['a count that lies', lying, /4000000000 facets, which take 200000000084 bytes, and is 684 bytes/],
    ['cut short', good.subarray(0, 500), /holds 12 facets, which take 684 bytes, and is 500/],
    ['too long', new Uint8Array([...good, 0]), /is 685 bytes/],
    ['no facets', stlBytes([]), /no facet/],
    ['a corner that is no number', withFloat(96, Number.NaN), /facet 1 that cannot be: NaN/],
    ['a corner at infinity', withFloat(96 + 50 * 11 + 32, Number.NEGATIVE_INFINITY), /facet 12 .* -Infinity/],
    ['a corner too far', withFloat(100, 1e30), /facet 1 that cannot be/],
    ['text without facets', new TextEncoder().encode('solid x\nendsolid x\n'.padEnd(200)), /no facet/],
    ['text cut short', text((s) => s.slice(0, 700)), /ends after \d whole facets/],
    ['text without its end', text((s) => s.slice(0, s.indexOf('endsolid'))), /ends after 12 whole facets/],
    ['a bad corner', text((s) => s.replace('vertex 400', 'vertex 4OO')), /line 4 that cannot be: 4oo/],
    ['comma decimals', text((s) => s.replace('vertex 400', 'vertex 400,5')), /line 4 that cannot be: 400,5/],
    ['NaN in text', text((s) => s.replace('vertex 400', 'vertex nan')), /line 4 that cannot be: nan/],
    ['1e999 in text', text((s) => s.replace('vertex 400', 'vertex 1e999')), /line 4 that cannot be/],
    ['a corner too few', text((s) => s.replace(/ {2}vertex.*\n/, '')), /line 6: vertex was expected/],
    ['one endless word', new TextEncoder().encode(`solid x\n${'f'.repeat(5000)}`), /line 2/],
    ['another text', new TextEncoder().encode('format: 1\n'.repeat(50)), /not an STL/],
  ])('%s', (_, bytes, words) => {
    const problem = refusal(() => corners(bytes));
    expect(problem.code).toBe('file-read');
    expect(problem.message).toMatch(words);
    expect(problem.advice).toBeTruthy();
  });
  test('five hundred megabytes, before anything is taken', () => {
    expect(refusal(() => stlReader(500_000_000)).message).toMatch(/500 MB large; at most 200 MB/);
  });
});

/** The second example with its first obstacle a scan. */
const designWith = (name: string, keys: string): string => {
  const path = join(folder, `${name}.yaml`);
  const obstacle = `    - {name: bay, ${keys}, clear: 5, plus_minus: 2}\n`;
  writeFileSync(
    path,
    exampleText('demo').replace('  obstacles:\n', () => `  obstacles:\n${obstacle}`),
  );
  return path;
};
const problemOf = async (path: string): Promise<Problem> => {
  const problems = await readDesignFile(path).then(
    () => [],
    (error: unknown) => (error instanceof PanError ? error.problems : Promise.reject(error)),
  );
  expect(problems).toHaveLength(1);
  return problems[0]!;
};

describe('a scan that a design names', () => {
  writeFileSync(join(folder, 'good.stl'), good);
  writeFileSync(join(folder, 'cut.stl'), good.subarray(0, 600));
  mkdirSync(join(folder, 'folder.stl'));
  spawnSync('mkfifo', [join(folder, 'pipe.stl')]);
  const large = openSync(join(folder, 'large.stl'), 'w');
  ftruncateSync(large, 500_000_000);
  closeSync(large);

  test.each([
    ['gone.stl', /is not there/],
    ['good.stl/inside.stl', /is not there/],
    ['folder.stl', /a folder/],
    ['pipe.stl', /no plain file/],
    ['cut.stl', /is 600 bytes/],
    ['large.stl', /500 MB/],
  ])('%s', async (name, words) => {
    const problem = await problemOf(designWith('named', `scan: ${name}, unit: mm`));
    expect(problem.message).toMatch(words);
    expect(problem.path.join('.')).toBe('chassis.obstacles.0.scan');
    expect(problem.line).toBeGreaterThan(1);
  });

  test('in metres by mistake', async () => {
    const problem = await problemOf(designWith('metres', 'scan: good.stl, unit: m'));
    expect(problem.path.join('.')).toBe('chassis.obstacles.0.unit');
    expect(problem.message).toMatch(/600000 mm across/);
  });

  const match = (points: readonly string[]): string =>
    `scan: good.stl, unit: mm, placement: {matches: [${points.join(', ')}]}`;
  test('by points in a line', async () => {
    const points = [0, 100, 250].map((x) => `{in_scan: [${x}, 0, 0], in_chassis: [${x}, 5, 0]}`);
    expect((await problemOf(designWith('line', match(points)))).message).toMatch(/lie in a line/);
  });
  test('by points that do not fit', async () => {
    const points = ['0, 0, 0', '100, 0, 0', '0, 130, 0'].map(
      (p, i) => `{in_scan: [${p}], in_chassis: [${i === 1 ? '130, 0, 0' : p}]}`,
    );
    const problem = await problemOf(designWith('slip', match(points)));
    expect(problem.message).toMatch(/up to \d+\.\d mm from their mates .* plus_minus 2\.0 mm/);
  });
  test('in order', async () => {
    const { design, assumed } = await readDesignFile(designWith('order', 'scan: good.stl'));
    const shape = design.chassis.obstacles[0]!.shape;
    expect(shape.kind === 'scan' && shape.soup?.count).toBe(12);
    expect(assumed.some((a) => a.path.join('.') === 'chassis.obstacles.0.unit' && a.value === 'mm')).toBe(
      true,
    );
  });
});
