import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { type Disk, nodeDisk, type SetFile, writeSet } from 'pan-cli/write/index.js';
import { describe, expect, it } from 'vitest';
import { markedSet, ownFolder, problem, tree } from './marked-set.js';

const root = ownFolder();
const target = (): string => join(root(), 'out');

describe('a set of files', () => {
  it('appears whole, manifest last, and says what it wrote', () => {
    const order: string[] = [];
    const watching: Disk = {
      ...nodeDisk,
      create: (file, content) => {
        order.push(file.slice(file.lastIndexOf('/') + 1));
        return nodeDisk.create(file, content);
      },
    };
    const written = writeSet(target(), markedSet('a'), false, watching);
    expect(order.at(-1)).toBe('manifest.json');
    expect(written.files).toBe(4);
    expect(written.replaced).toBe(false);
    expect(readFileSync(join(target(), '2-laser/belly.dxf'), 'utf8')).toBe('belly a');
    expect([...readFileSync(join(target(), '2-laser/bare/belly.dxf'))]).toEqual([1, 2, 3]);
    expect(readdirSync(root())).toEqual(['out']);
  });

  it('goes into an empty folder, and is replaced only when asked', () => {
    mkdirSync(target());
    writeSet(target(), markedSet('a'), false);
    const refused = problem(() => writeSet(target(), markedSet('b'), false));
    expect(refused.code).toBe('file-write');
    expect(refused.advice).toContain('--replace');
    expect(tree(target())['00-read-first.txt']).toBe('read a');
    expect(writeSet(target(), markedSet('b'), true)).toMatchObject({ replaced: true, keptAt: null });
    expect(tree(target())['00-read-first.txt']).toBe('read b');
    expect(readdirSync(root())).toEqual(['out']);
  });

  it('takes away files of the earlier set that the new one lacks', () => {
    writeSet(target(), [...markedSet('a'), { path: '1-mock-up/lid.stl', content: 'lid' }], false);
    writeSet(target(), markedSet('b'), true);
    expect(existsSync(join(target(), '1-mock-up'))).toBe(false);
  });

  it('may be replaced after a file was taken away, since nothing is lost', () => {
    writeSet(target(), markedSet('a'), false);
    unlinkSync(join(target(), '00-read-first.txt'));
    writeSet(target(), markedSet('b'), true);
    expect(tree(target())['00-read-first.txt']).toBe('read b');
  });
});

describe('what a person did to a set is kept, even with --replace', () => {
  const cases: readonly (readonly [string, (folder: string) => void, string])[] = [
    ['an edited file', (f) => writeFileSync(join(f, '2-laser/belly.dxf'), 'mine'), '2-laser/belly.dxf'],
    ['a file of the same length', (f) => writeFileSync(join(f, '2-laser/belly.dxf'), 'bellY a'), 'belly.dxf'],
    ['an added file', (f) => writeFileSync(join(f, 'my notes.txt'), 'hours'), 'my notes.txt'],
    ['an added file deep down', (f) => writeFileSync(join(f, '2-laser/bare/x'), ''), '2-laser/bare/x'],
    [
      'a link in a file’s place',
      (f) => {
        unlinkSync(join(f, '00-read-first.txt'));
        writeFileSync(join(root(), 'elsewhere'), 'read a');
        symlinkSync(join(root(), 'elsewhere'), join(f, '00-read-first.txt'));
      },
      '00-read-first.txt',
    ],
  ];
  it.each(cases)('%s', (_, change, named) => {
    writeSet(target(), markedSet('a'), false);
    change(target());
    const before = tree(target());
    const refused = problem(() => writeSet(target(), markedSet('b'), false));
    expect(refused.code).toBe('file-edited');
    expect(refused.message).toContain(named);
    expect(tree(target())).toEqual(before);
    const { keptAt } = writeSet(target(), markedSet('b'), true);
    expect(tree(target())['00-read-first.txt']).toBe('read b');
    const kept = tree(keptAt ?? '');
    expect(Object.keys(kept)).toHaveLength(1);
    for (const [path, content] of Object.entries(kept)) {
      expect(path).toContain(named);
      expect(content).toBe(before[path]);
    }
    expect(readdirSync(root()).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('twice over, each time in a folder of its own', () => {
    for (const mark of ['a', 'b', 'c']) {
      writeSet(target(), markedSet(mark), true);
      writeFileSync(join(target(), 'mine.txt'), mark);
    }
    expect(readFileSync(`${target()}-kept-1/mine.txt`, 'utf8')).toBe('a');
    expect(readFileSync(`${target()}-kept-2/mine.txt`, 'utf8')).toBe('b');
  });

  it('a folder of other files, with or without a broken list', () => {
    mkdirSync(target());
    writeFileSync(join(target(), 'thesis.txt'), 'years of work');
    expect(problem(() => writeSet(target(), markedSet('a'), true)).code).toBe('file-edited');
    writeFileSync(join(target(), '.pan-set.json'), '{"format":1,"files":[{"path":5}]}');
    expect(problem(() => writeSet(target(), markedSet('a'), true)).code).toBe('file-edited');
    expect(readFileSync(join(target(), 'thesis.txt'), 'utf8')).toBe('years of work');
  });

  it.each(['while the new set was being written', 'after the last look'])('a file saved %s', (when) => {
    writeSet(target(), markedSet('a'), false);
    const save = (): void => writeFileSync(join(target(), 'late.txt'), 'late');
    const late: Disk = {
      ...nodeDisk,
      create: (file, content) => {
        if (when.startsWith('while') && file.endsWith('manifest.json')) save();
        return nodeDisk.create(file, content);
      },
      rename: (from, to) => {
        if (when.startsWith('after') && from === target()) save();
        nodeDisk.rename(from, to);
      },
    };
    const { keptAt } = writeSet(target(), markedSet('b'), true, late);
    expect(tree(keptAt ?? '')).toEqual({ 'late.txt': 'late' });
    expect(tree(target())['00-read-first.txt']).toBe('read b');
    expect(readdirSync(root())).toEqual(['out', 'out-kept-1']);
  });
});

describe('a place that cannot be written is refused with the reason and what to do', () => {
  const refused = (place: string): string => {
    const { code, message, advice } = problem(() => writeSet(place, markedSet('a'), false));
    expect(code).toBe('file-write');
    expect(advice).not.toBe('');
    return message;
  };
  it('missing parent', () => expect(refused(join(root(), 'a/b'))).toContain('does not exist'));
  it('a file in the way', () => {
    writeFileSync(join(root(), 'file'), 'x');
    expect(refused(join(root(), 'file'))).toContain('not a folder');
    expect(refused(join(root(), 'file/under'))).toMatch(/not a folder/);
    expect(readFileSync(join(root(), 'file'), 'utf8')).toBe('x');
  });
  it('a link in the way, even to an empty folder', () => {
    mkdirSync(join(root(), 'real'));
    symlinkSync(join(root(), 'real'), target());
    expect(refused(target())).toContain('not a folder');
    expect(readdirSync(join(root(), 'real'))).toEqual([]);
  });
  it('a name too long', () => expect(refused(join(root(), 'x'.repeat(300)))).toContain('too long'));
  it('a name no file can have', () => expect(refused(join(root(), 'a\u0000b'))).toContain('character'));
  it('links that go round', () => {
    symlinkSync(join(root(), 'two'), join(root(), 'one'));
    symlinkSync(join(root(), 'one'), join(root(), 'two'));
    expect(refused(join(root(), 'one/out'))).toContain('round');
  });
  it('the top of the disk', () => expect(refused('/')).toContain('top of the disk'));
  it('a folder without permission', () => {
    // The owner of the machine may write anywhere, so for this one the test is somebody else.
    const nobody = process.getuid?.() === 0;
    chmodSync(root(), 0o555);
    if (nobody) process.seteuid?.(65534);
    try {
      expect(refused(target())).toContain('may not write');
    } finally {
      if (nobody) process.seteuid?.(0);
      chmodSync(root(), 0o700);
    }
  });
});

describe('a file of the set never leaves the set', () => {
  const paths = [
    '../out.txt',
    '/etc/x',
    'a/../../b',
    'a\\b',
    'A.dxf',
    'con.dxf',
    '2-laser/nul',
    'a//b',
    'a/',
    '.x',
    'x.',
  ];
  it.each(paths)('%s', (path) => {
    expect(problem(() => writeSet(target(), [{ path, content: '' }], false)).code).toBe('file-write');
    expect(readdirSync(root())).toEqual([]);
  });
  it('nor stands for a file and a folder, or twice', () => {
    const at = (path: string): SetFile => ({ path, content: '' });
    expect(problem(() => writeSet(target(), [at('a'), at('a/b')], false)).code).toBe('file-write');
    expect(problem(() => writeSet(target(), [at('a'), at('a')], false)).code).toBe('file-write');
  });
});
