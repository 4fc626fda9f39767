import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { drawingOf } from 'pan-cli/read/drawing/read-drawing.js';
import { parseYaml } from 'pan-cli/read/parse-yaml.js';
import { readDesign } from 'pan-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SMALLEST } from '../design-text.js';
import { expectWithin } from '../numbers.js';

type Point = readonly [number, number];

const SCRIPT = fileURLToPath(new URL('dxf-rail.py', import.meta.url));
let folder = '';

// Written by Debian's python3-ezdxf, which knows nothing of our reader.
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pan-rail-'));
  execFileSync('/usr/bin/python3', [SCRIPT, folder], { stdio: ['ignore', 'ignore', 'inherit'] });
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const area = (loop: readonly Point[]): number =>
  loop.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length] as Point;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

// 600 × 220 with corners of R 30: each takes (1 − π/4)·r² off.
const AREA = 600 * 220 - (4 - Math.PI) * 900;

describe('one rail, drawn in eleven ways by another program', () => {
  it.each([
    'polyline',
    'old polyline',
    'pieces',
    'mirrored',
    'mirrored polyline',
    'blocks',
    'splines',
    'fit points',
    'no unit',
    'ellipses',
    'inches',
  ])('%s', async (name) => {
    const drawing = await drawingOf(`${name}.dxf`, readFileSync(join(folder, `${name}.dxf`), 'utf8'));
    const text = SMALLEST.replace(
      'rail: {length: 690, width: 250}',
      'rail: {outline: rail.dxf, origin: [0, 110], drawn_in: UNIT, seen_from: above}\n  rail_holes: {drawing: rail.dxf}'.replace(
        ', drawn_in: UNIT',
        drawing.unit === null ? ', drawn_in: mm' : '',
      ),
    );
    const { design } = readDesign(parseYaml(text).raw, [], { 'rail.dxf': drawing });
    const { outline } = design.engine.rail;
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
    expectWithin(Math.min(...xs), 0, 1e-6);
    expectWithin(Math.max(...xs), 600, 1e-6);
    expectWithin(Math.min(...ys), -110, 1e-6);
    expectWithin(Math.max(...ys), 110, 1e-6);
    // Within 0.05 mm of what was drawn all the way round; one corner rounded the wrong way would be 193 mm² off.
    expectWithin(area(outline), AREA, 0.05 * (2 * (540 + 160) + 2 * Math.PI * 30));
    expect(design.engine.railHoles).toHaveLength(1);
    expectWithin(design.engine.railHoles[0]?.at[0], 20, 1e-6);
    expectWithin(design.engine.railHoles[0]?.at[1], -90, 1e-6);
    expect(design.engine.railHoles[0]?.thread).toBe(8);
  });
});
