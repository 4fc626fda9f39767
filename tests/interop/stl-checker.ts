import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readStl } from 'pan-core/drawing/index.js';

export const MISSING_CHECKER = 'skipped: admesh missing';

export const hasChecker = (): boolean => {
  try {
    execFileSync('admesh', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

/** What the independent checker counts: every number but facets, parts and volume is a fault when not 0. */
export interface Faults {
  readonly facets: number;
  readonly parts: number;
  readonly faults: Readonly<Record<string, number>>;
}

const COUNTED = [
  'Total disconnected facets',
  'Degenerate facets',
  'Edges fixed',
  'Facets removed',
  'Facets added',
  'Facets reversed',
  'Backwards edges',
  'Normals fixed',
];

export const checkSolid = (bytes: Uint8Array): Faults => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-stl-'));
  try {
    const path = join(folder, 'solid.stl');
    writeFileSync(path, bytes);
    const out = execFileSync('admesh', [path], { encoding: 'utf8' });
    const count = (label: string): number => {
      const found = new RegExp(`${label}\\s*:\\s*(\\d+)`).exec(out)?.[1];
      if (found === undefined) throw new Error(`the checker did not say "${label}"`);
      return Number(found);
    };
    return {
      facets: count('Number of facets'),
      parts: count('Number of parts'),
      faults: Object.fromEntries(COUNTED.map((label) => [label, count(label)])),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
};

export const NO_FAULTS: Readonly<Record<string, number>> = Object.fromEntries(
  COUNTED.map((label) => [label, 0]),
);

/** Edges of a file's triangles, by corner digits, that are not run exactly once each way. */
export const unpaired = (bytes: Uint8Array): readonly string[] => {
  const corners = readStl(bytes);
  const runs = new Map<string, number>();
  const at = (n: number): string => [...corners.subarray(3 * n, 3 * n + 3)].join(' ');
  for (let t = 0; t < corners.length / 9; t++) {
    for (let i = 0; i < 3; i++) {
      const edge = `${at(3 * t + i)}|${at(3 * t + ((i + 1) % 3))}`;
      runs.set(edge, (runs.get(edge) ?? 0) + 1);
    }
  }
  return [...runs]
    .filter(([edge, n]) => n !== 1 || runs.get(edge.split('|').reverse().join('|')) !== 1)
    .map(([e]) => e);
};

/** Volume of a file's triangles, mm³, summed in double from its first corner. */
export const stlVolume = (bytes: Uint8Array): number => {
  const c = readStl(bytes);
  const o = [c[0] ?? 0, c[1] ?? 0, c[2] ?? 0];
  let six = 0;
  for (let t = 0; t < c.length; t += 9) {
    const v = (i: number): number => (c[t + i] ?? 0) - (o[i % 3] ?? 0);
    six +=
      v(0) * (v(4) * v(8) - v(5) * v(7)) -
      v(1) * (v(3) * v(8) - v(5) * v(6)) +
      v(2) * (v(3) * v(7) - v(4) * v(6));
  }
  return six / 6;
};
