import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const dist = join(import.meta.dirname, '../../packages/pan-cli/dist');
const demo = join(import.meta.dirname, '../../packages/pan-cli/examples/demo.yaml');
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** The built command line with what the engine compiled of it left out, or replaced by other bytes. */
const builtWith = (compiled: Buffer | null): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-stored-'));
  folders.push(folder);
  for (const name of readdirSync(dist)) {
    if (!name.endsWith('.bin')) symlinkSync(join(dist, name), join(folder, name));
    else if (compiled !== null) writeFileSync(join(folder, name), compiled);
  }
  return folder;
};

const check = (folder: string, flags: readonly string[] = []): { said: string; code: number | null } => {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['--preserve-symlinks', '--preserve-symlinks-main', ...flags, join(folder, 'pan.js'), 'check', demo],
    { encoding: 'utf8' },
  );
  return { said: `${stdout}${stderr}`, code: status };
};

/** The outside opinion is the plain bundle, which node compiles from its text alone. */
describe('what the engine compiled at build time', () => {
  const file = readdirSync(dist).find((name) => name.endsWith('.bin'));
  const plain = check(builtWith(null));

  it('is there for the engine that built it', () => {
    expect(file).toContain(`-${process.versions.v8}-${process.arch}.bin`);
  });

  it('changes no byte of the answer', () => {
    expect(plain.said).toContain('FIRST');
    expect(check(dist)).toEqual(plain);
  });

  it('is passed over under other flags, and where it is cut short or not its own', () => {
    expect(check(dist, ['--no-opt'])).toEqual(plain);
    const whole = readFileSync(join(dist, file ?? ''));
    expect(check(builtWith(whole.subarray(0, 100_000)))).toEqual(plain);
    expect(check(builtWith(Buffer.from('not compiled by anything')))).toEqual(plain);
  });
});
