import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { SMALL } from './killed-cut.js';
import { buildPan, type Ran, runPan, STACK } from './pan-command.js';

const NO_DISK = 'skipped: this machine does not let a test mount a small disk';
/** The set takes about 0.5 MB: one fits on the disk, two do not. */
const DISK = 'size=900k';
const EDIT = 'an edit by hand';

let disk = '';
let design = '';
let mounted = false;
const mount = (...options: readonly string[]): boolean =>
  spawnSync('mount', ['-t', 'tmpfs', '-o', options.join(','), 'tmpfs', disk]).status === 0;

beforeAll(buildPan);
beforeEach(() => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-cut-disk-'));
  disk = join(folder, 'disk');
  design = join(folder, 'pan.yaml');
  mkdirSync(disk);
  writeFileSync(design, SMALL);
  mounted = mount(DISK);
});
afterEach(() => {
  if (mounted) spawnSync('umount', [disk]);
  rmSync(join(disk, '..'), { recursive: true, force: true });
});

const cut = (out: string, ...more: readonly string[]): Ran =>
  runPan(['cut', design, '--out', out, '--despite-fails', ...more]);

/** Every file on the disk with its bytes, hidden ones too. */
const standing = (): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(disk, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort()
      .map((file) => [file, readFileSync(file, 'latin1')]),
  );

const expectRefused = ({ code, out, err }: Ran, says: string): void => {
  expect([code, out]).toEqual([3, '']);
  expect(err).toContain(says);
  expect(err).not.toMatch(STACK);
};

describe('pan cut', () => {
  it('on a disk that fills up leaves the earlier set as it was, edits too', (ctx) => {
    if (!mounted) ctx.skip(NO_DISK);
    const set = join(disk, 'set');
    expect(cut(set).code).toBe(1);
    writeFileSync(join(set, '00-read-first.txt'), EDIT);
    const before = standing();
    expect(Object.keys(before).length).toBeGreaterThan(20);
    expectRefused(cut(set, '--replace', '--paper', 'Letter'), 'disk is full');
    expect(standing()).toEqual(before);
    expectRefused(cut(join(disk, 'other')), 'disk is full');
    expect(standing()).toEqual(before);
  });

  it('on a read-only disk leaves what stands there', (ctx) => {
    if (!mounted) ctx.skip(NO_DISK);
    const set = join(disk, 'set');
    expect(cut(set).code).toBe(1);
    const before = standing();
    if (!mount('remount', 'ro')) ctx.skip(NO_DISK);
    expectRefused(cut(set, '--replace'), 'read-only');
    expectRefused(cut(join(disk, 'other')), 'read-only');
    expect(standing()).toEqual(before);
  });

  it('refuses a name too long and leaves nothing', () => {
    expectRefused(cut(join(disk, 'x'.repeat(300))), 'too long');
    // Long enough to stand, too long for the folder it is made in beside it.
    expectRefused(cut(join(disk, 'x'.repeat(250))), 'too long');
    expect(standing()).toEqual({});
  });
});
