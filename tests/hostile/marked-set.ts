import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SetFile } from 'pan-cli/write/index.js';
import { PanError } from 'pan-core';
import { afterEach, beforeEach } from 'vitest';

/** A cut set of four files, told by a mark. */
export const markedSet = (mark: string): readonly SetFile[] => [
  { path: 'manifest.json', content: `{"mark":"${mark}"}` },
  { path: '00-read-first.txt', content: `read ${mark}` },
  { path: '2-laser/belly.dxf', content: `belly ${mark}` },
  { path: '2-laser/bare/belly.dxf', content: new Uint8Array([1, 2, 3]) },
];

/** Every file under a folder with its content, hidden ones too. */
export const tree = (folder: string): Record<string, string> => {
  const out: Record<string, string> = {};
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const at = join(folder, name);
    if (statSync(at).isFile()) out[name] = readFileSync(at, 'latin1');
  }
  return out;
};

/** What was refused, in one problem. */
export const problem = (run: () => unknown): { code: string; message: string; advice: string } => {
  try {
    run();
  } catch (error) {
    if (!(error instanceof PanError)) throw error;
    const [first] = error.problems;
    return { code: first?.code ?? '', message: first?.message ?? '', advice: first?.advice ?? '' };
  }
  throw new Error('nothing was refused');
};

/** A folder of each test's own, gone after it. */
export const ownFolder = (): (() => string) => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pan-write-'));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return () => folder;
};
