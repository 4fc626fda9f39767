import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Disk, nodeDisk, writeSet } from 'pan-cli/write/index.js';
import { PanError } from 'pan-core';
import { describe, expect, it } from 'vitest';
import { markedSet, ownFolder, problem, tree } from './marked-set.js';

const root = ownFolder();
const target = (): string => join(root(), 'out');

const systemError = (code: string): Error => Object.assign(new Error(code), { code });

/** A disk whose nth change of anything fails: once, or for good as when the machine stops there. */
const failing = (nth: number, code: string, forGood: boolean): { disk: Disk; count: () => number } => {
  let n = 0;
  const change =
    <A extends readonly unknown[], R>(act: (...args: A) => R) =>
    (...args: A): R => {
      n += 1;
      if (n === nth || (forGood && n > nth)) throw systemError(code);
      return act(...args);
    };
  const disk: Disk = {
    ...nodeDisk,
    makeFolder: change(nodeDisk.makeFolder),
    create: change((file: string, content: Uint8Array): number => {
      return nodeDisk.create(file, content);
    }),
    rename: change(nodeDisk.rename),
    removeFile: change(nodeDisk.removeFile),
    removeFolder: change(nodeDisk.removeFolder),
  };
  return { disk, count: () => n };
};

describe('whatever single step fails, the set is there whole or the earlier one is', () => {
  const steps = (): number => {
    writeSet(target(), markedSet('a'), false);
    const { disk, count } = failing(0, '', false);
    writeSet(target(), markedSet('b'), true, disk);
    rmSync(target(), { recursive: true });
    return count();
  };
  it.each(['ENOSPC', 'EROFS', 'EIO', 'EACCES'])('%s at every step', (code) => {
    const all = steps();
    expect(all).toBeGreaterThan(15);
    let refusals = 0;
    for (let nth = 1; nth <= all; nth++) {
      writeSet(target(), markedSet('a'), false);
      const before = tree(target());
      try {
        writeSet(target(), markedSet('b'), true, failing(nth, code, false).disk);
        expect(tree(target())['manifest.json']).toBe('{"mark":"b"}');
      } catch (error) {
        refusals += 1;
        expect(error).toBeInstanceOf(PanError);
        expect(tree(target())).toEqual(before);
        expect(readdirSync(root())).toEqual(['out']);
      }
      rmSync(root(), { recursive: true });
      mkdirSync(root());
    }
    expect(refusals).toBeGreaterThan(9);
  });

  it('the machine stops at any step: never part of a set, and the next run carries on', () => {
    const all = steps();
    for (let nth = 1; nth <= all; nth++) {
      writeSet(target(), markedSet('a'), false);
      const before = tree(target());
      const { disk } = failing(nth, 'EIO', true);
      try {
        writeSet(target(), markedSet('b'), true, disk);
      } catch (error) {
        expect(error).toBeInstanceOf(PanError);
      }
      if (existsSync(target())) {
        const now = tree(target());
        if (now['manifest.json'] === '{"mark":"a"}') expect(now).toEqual(before);
        else expect(now['00-read-first.txt']).toBe('read b');
      }
      // The folders of a run that was killed carry the number of a process that is no more.
      for (const name of readdirSync(root())) {
        if (name.startsWith('.'))
          nodeDisk.rename(join(root(), name), join(root(), name.replace(/[0-9]+$/, '999999999')));
      }
      writeSet(target(), markedSet('c'), true);
      expect(tree(target())['manifest.json']).toBe('{"mark":"c"}');
      expect(readdirSync(root())).toEqual(['out']);
      rmSync(root(), { recursive: true });
      mkdirSync(root());
    }
  });

  it('the machine stops between the two renames: the next run first puts the earlier set back', () => {
    writeSet(target(), markedSet('a'), false);
    const before = tree(target());
    let stopped = false;
    const stop = (): void => {
      if (stopped) throw systemError('EIO');
    };
    const disk: Disk = {
      ...nodeDisk,
      rename: (from, to) => {
        stop();
        nodeDisk.rename(from, to);
        stopped = true;
      },
      removeFile: stop,
      removeFolder: stop,
    };
    const { message } = problem(() => writeSet(target(), markedSet('b'), true, disk));
    expect(message).toContain('the earlier one now lies at');
    expect(existsSync(target())).toBe(false);
    for (const name of readdirSync(root())) {
      nodeDisk.rename(join(root(), name), join(root(), name.replace(/[0-9]+$/, '999999999')));
    }
    expect(problem(() => writeSet(target(), markedSet('c'), false)).message).toContain('already holds a set');
    expect(tree(target())).toEqual(before);
    expect(readdirSync(root())).toEqual(['out']);
  });

  it('a disk that keeps fewer bytes than it was given', () => {
    writeSet(target(), markedSet('a'), false);
    const short: Disk = { ...nodeDisk, create: (file, content) => nodeDisk.create(file, content) - 1 };
    expect(problem(() => writeSet(target(), markedSet('b'), true, short)).message).toContain('bytes');
    expect(tree(target())['manifest.json']).toBe('{"mark":"a"}');
    expect(readdirSync(root())).toEqual(['out']);
  });
});
