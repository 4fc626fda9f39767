import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cut } from 'pan-cli/commands/cut.js';
import { PanError } from 'pan-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { plainScreen } from '../plain-screen.js';

const example = (name: string): string =>
  fileURLToPath(new URL(`../../packages/pan-cli/examples/${name}.yaml`, import.meta.url));

let root = '';
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'pan-cut-'));
});
afterEach(() => {
  rmSync(root, { recursive: true });
});

const run = async (file: string, options: Record<string, string | true>, json = false) => {
  const said: string[] = [];
  const told: string[] = [];
  const screen = plainScreen(80, {
    write: (text) => said.push(text),
    tell: (text) => told.push(text),
    json,
  });
  const exit = await cut({ file, options }, screen);
  return { exit, said: said.join(''), told: told.join('') };
};

const codeOf = async (act: Promise<unknown>): Promise<string> => {
  try {
    await act;
  } catch (error) {
    if (error instanceof PanError) return error.problems[0]?.code ?? '';
    throw error;
  }
  return 'nothing was refused';
};

describe('pan cut', () => {
  it('stops at a design that fails, says why, and writes nothing', async () => {
    const { exit, said, told } = await run(example('demo'), { out: join(root, 'set') });
    expect(exit).toBe(1);
    expect(said).toBe('');
    expect(told).toContain('NOT READY TO CUT');
    expect(told).toContain('ground');
    expect(readdirSync(root)).toEqual([]);
  });

  it('writes a marked set of it with --despite-fails, and still ends with 1', async () => {
    const out = join(root, 'set');
    const { exit, said } = await run(example('demo'), { out, 'despite-fails': true });
    expect(exit).toBe(1);
    expect(said).toContain('NOT READY TO CUT');
    for (const name of readdirSync(join(out, '2-laser')).filter((n) => n.endsWith('.dxf'))) {
      expect(readFileSync(join(out, '2-laser', name), 'latin1'), name).toContain('NOT READY TO CUT');
    }
  });

  it('writes the set of a design that passes, and gives the manifest to programs', async () => {
    const out = join(root, 'set');
    const { exit, said } = await run(example('two-wings'), { out }, true);
    expect(exit).toBe(0);
    const data = JSON.parse(said);
    const { folder, replaced, kept_at, ...manifest } = data;
    expect([folder, replaced, kept_at]).toEqual([out, false, null]);
    expect(JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8'))).toEqual(manifest);
    for (const { file } of manifest.parts) expect(existsSync(join(out, file)), file).toBe(true);
    expect(readFileSync(join(out, '00-read-first.txt'), 'utf8')).not.toContain('NOT READY');
  });

  it('needs --replace for a second time', async () => {
    const out = join(root, 'set');
    await run(example('two-wings'), { out });
    expect(await codeOf(run(example('two-wings'), { out }))).toBe('file-write');
    expect((await run(example('two-wings'), { out, replace: true })).exit).toBe(0);
  });

  it('keeps files that are not its own', async () => {
    const out = join(root, 'mine');
    mkdirSync(out);
    writeFileSync(join(out, 'notes.txt'), 'mine');
    expect(await codeOf(run(example('two-wings'), { out, replace: true }))).toBe('file-edited');
    expect(readdirSync(out)).toEqual(['notes.txt']);
  });

  it('asks for --out', async () => {
    expect(await codeOf(run(example('two-wings'), {}))).toBe('input-option');
  });

  it('writes nothing for a file that is no design', async () => {
    const file = join(root, 'bad.yaml');
    writeFileSync(file, 'format: 1\ntitle: [\n');
    expect(await codeOf(run(file, { out: join(root, 'set') }))).toMatch(/^input-/);
    expect(readdirSync(root)).toEqual(['bad.yaml']);
  });
});
