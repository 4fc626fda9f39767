import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type SetFile, writeSet } from 'pan-cli/write/index.js';
import { PanError } from 'pan-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const NO_DISK = 'skipped: this machine does not let a test mount a small disk';

let disk = '';
let mounted = false;
const mount = (...options: readonly string[]): boolean =>
  spawnSync('mount', ['-t', 'tmpfs', '-o', options.join(','), 'tmpfs', disk]).status === 0;

beforeEach(() => {
  disk = mkdtempSync(join(tmpdir(), 'pan-disk-'));
  mounted = mount('size=256k');
});
afterEach(() => {
  if (mounted) spawnSync('umount', [disk]);
  rmSync(disk, { recursive: true });
});

const set = (mark: string, bytes: number): readonly SetFile[] => [
  { path: '00-read-first.txt', content: mark },
  { path: '1-mock-up/pan.stl', content: new Uint8Array(bytes) },
  { path: 'manifest.json', content: `{"mark":"${mark}"}` },
];

const refusal = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    if (error instanceof PanError) return error.message;
    throw error;
  }
  throw new Error('nothing was refused');
};

describe('a real disk', () => {
  it('that is full leaves nothing behind', (ctx) => {
    if (!mounted) ctx.skip(NO_DISK);
    const target = join(disk, 'out');
    expect(refusal(() => writeSet(target, set('a', 1_000_000), false))).toContain('disk is full');
    expect(readdirSync(disk)).toEqual([]);
  });

  it('that fills up while a set is replaced leaves the earlier set as it was', (ctx) => {
    if (!mounted) ctx.skip(NO_DISK);
    const target = join(disk, 'out');
    writeSet(target, set('a', 60_000), false);
    expect(refusal(() => writeSet(target, set('b', 250_000), true))).toContain('disk is full');
    expect(readFileSync(join(target, 'manifest.json'), 'utf8')).toBe('{"mark":"a"}');
    expect(readFileSync(join(target, '1-mock-up/pan.stl'))).toHaveLength(60_000);
    expect(readdirSync(disk)).toEqual(['out']);
    writeSet(target, set('c', 60_000), true);
    expect(readFileSync(join(target, 'manifest.json'), 'utf8')).toBe('{"mark":"c"}');
  });

  it('that is read-only is refused as such', (ctx) => {
    if (!mounted) ctx.skip(NO_DISK);
    const target = join(disk, 'out');
    writeSet(target, set('a', 10), false);
    mkdirSync(join(disk, 'empty'));
    if (!mount('remount', 'ro')) ctx.skip(NO_DISK);
    expect(refusal(() => writeSet(target, set('b', 10), true))).toContain('read-only');
    expect(refusal(() => writeSet(join(disk, 'new'), set('b', 10), false))).toContain('read-only');
    expect(refusal(() => writeSet(join(disk, 'empty'), set('b', 10), false))).toContain('read-only');
    expect(readFileSync(join(target, 'manifest.json'), 'utf8')).toBe('{"mark":"a"}');
  });
});
