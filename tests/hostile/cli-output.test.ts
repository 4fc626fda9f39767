import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, closeSync, existsSync, mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildPan, example, inFolder, names, pan, runPan, STACK } from './pan-command.js';

beforeAll(buildPan);

const measured = [
  ...['--rail-length', '690', '--rail-width', '250', '--crank-centre', '62', '--stroke', '96'],
  ...['--big-end', '41', '--nose-up', '3', '--shallow', '58', '--sump-length', '320'],
  ...['--sump-depth', '172', '--ground', '283'],
];

const report = (file: string, ...more: readonly string[]) =>
  JSON.parse(runPan(['check', file, '--json', ...more]).out);

describe('pan new', () => {
  test.each(['demo', 'two-wings', 'inches'])('a starter from %s is that design with its comments', (name) => {
    inFolder((folder) => {
      const file = join(folder, 'mine.yaml');
      const { code, out, err } = runPan(['new', file, '--from', name]);
      expect([code, out]).toEqual([0, '']);
      expect(err).toContain(`pan check ${file}`);
      const text = readFileSync(file, 'utf8');
      expect(text.match(/#/g)?.length).toBeGreaterThan(5);
      expect(text).toBe(readFileSync(example(name), 'utf8'));
    });
  });

  test('ten measurements make a design that can be checked and says what is still unknown', () => {
    inFolder((folder) => {
      const file = join(folder, 'mine.yaml');
      expect(runPan(['new', file, ...measured, '--title', 'Mine: "first" # try']).code).toBe(0);
      const checked = report(file);
      expect(checked.title).toBe('Mine: "first" # try');
      expect(checked.unknown.map((one: { key: string }) => one.key)).toContain('engine.crank.throws');
      expect(checked.capacity.sharp_L).toBeGreaterThan(5);
    });
  });

  // 1 in = 25.4 mm exactly, so the same pan given in inches holds the same; the file keeps 0.001 in.
  test('the same measurements in inches make the same pan', () => {
    inFolder((folder) => {
      const [metric, inches] = [join(folder, 'mm.yaml'), join(folder, 'in.yaml')];
      const turned = measured.map((word, i) =>
        word.startsWith('--') || measured[i - 1] === '--nose-up' ? word : String(Number(word) / 25.4),
      );
      expect(runPan(['new', metric, ...measured]).code).toBe(0);
      expect(runPan(['new', inches, ...turned, '--units', 'in']).code).toBe(0);
      expect(readFileSync(inches, 'utf8')).toMatch(/^units: in$/m);
      const [a, b] = [report(metric).capacity.sharp_L, report(inches).capacity.sharp_L];
      expect(Math.abs(a - b)).toBeLessThan(1e-3 * a);
    });
  });

  test('a file that is there is kept unless --replace is given', () => {
    inFolder((folder) => {
      const file = join(folder, 'mine.yaml');
      writeFileSync(file, 'precious');
      const kept = runPan(['new', file, '--from', 'demo']);
      expect(kept.code).toBe(3);
      expect(kept.err).toContain('kept');
      expect(readFileSync(file, 'utf8')).toBe('precious');
      expect(runPan(['new', file, '--from', 'demo', '--replace']).code).toBe(0);
      expect(readFileSync(file, 'utf8')).toBe(readFileSync(example('demo'), 'utf8'));
      expect(names(folder)).toEqual(['mine.yaml', 'pan-design.schema.json']);
    });
  });

  test('editors find the schema that a starter names, beside it, and one that is there stays', () => {
    inFolder((folder) => {
      const schema = join(folder, 'pan-design.schema.json');
      for (const args of [['--from', 'inches'], measured]) {
        expect(runPan(['new', join(folder, 'mine.yaml'), '--replace', ...args]).code).toBe(0);
        const named = /^# yaml-language-server: \$schema=(.+)$/m.exec(
          readFileSync(join(folder, 'mine.yaml'), 'utf8'),
        )?.[1] as string;
        expect(join(folder, named)).toBe(schema);
        expect(JSON.parse(readFileSync(schema, 'utf8')).title).toBe('Oil pan design');
        writeFileSync(schema, '{"title": "Oil pan design", "mine": true}');
      }
      expect(readFileSync(schema, 'utf8')).toContain('mine');
    });
  });

  test.each([
    [['--from', 'demo', '--stroke', '90'], '--stroke would be lost'],
    [['--stroke', '90'], '--rail-length is missing'],
    [[], 'no terminal'],
    [[...measured.slice(0, -2), '--ground', '100'], 'through the road'],
    [[...measured.slice(0, -2), '--ground', '-283'], 'between 80 and 800 mm'],
    [[...measured.slice(0, -2), '--ground', '9-1/2 in'], '9 1/2 in'],
  ])('with %j it refuses and writes nothing', (args, says) => {
    inFolder((folder) => {
      const { code, out, err } = runPan(['new', join(folder, 'mine.yaml'), ...args]);
      expect([code, out]).toEqual([2, '']);
      expect(err).toContain(says);
      expect(err).not.toMatch(STACK);
      expect(names(folder)).toEqual([]);
    });
  });

  test('a folder that is missing or is a file ends with 3', () => {
    inFolder((folder) => {
      writeFileSync(join(folder, 'file'), '');
      for (const place of ['none/mine.yaml', 'file/mine.yaml', '.']) {
        const { code, err } = runPan(['new', place, '--from', 'demo'], folder);
        expect(code).toBe(3);
        expect(err).not.toMatch(STACK);
      }
      expect(names(folder)).toEqual(['file']);
    });
  });
});

describe('pan cut', () => {
  const cut = (out: string, ...more: readonly string[]) =>
    runPan(['cut', example('two-wings'), '--out', out, ...more]);

  test.each([
    ['in a folder that is missing', 'none/set'],
    ['under a file', 'file/set'],
    ['in the place of a file', 'file'],
  ])('%s it ends with 3, says where, and leaves nothing behind', (_, place) => {
    inFolder((folder) => {
      writeFileSync(join(folder, 'file'), 'mine');
      const { code, out, err } = cut(join(folder, place));
      expect([code, out]).toEqual([3, '']);
      expect(err).toContain(join(folder, place));
      expect(err).not.toMatch(STACK);
      expect(names(folder)).toEqual(['file']);
      expect(readFileSync(join(folder, 'file'), 'utf8')).toBe('mine');
    });
  });

  test('into a folder of the system that nobody may write to it ends with 3', () => {
    const { code, out, err } = cut('/proc/pan-set');
    expect([code, out]).toEqual([3, '']);
    expect(err).toContain('/proc/pan-set');
    expect(err).not.toMatch(STACK);
  });

  test('a read-only folder stays empty', () => {
    inFolder((folder) => {
      const locked = join(folder, 'locked');
      mkdirSync(locked);
      chmodSync(locked, 0o555);
      // Root may write anywhere: then the set is written, and whole.
      const { code } = cut(join(locked, 'set'));
      expect(code).toBe(process.getuid?.() === 0 ? 0 : 3);
      expect(existsSync(join(locked, 'set', 'manifest.json'))).toBe(code === 0);
      chmodSync(locked, 0o755);
    });
  });

  test('a folder of someone’s own files is left as it is, with and without --replace', () => {
    inFolder((folder) => {
      const own = join(folder, 'own');
      mkdirSync(own);
      writeFileSync(join(own, 'letter.txt'), 'dear');
      for (const more of [[], ['--replace']]) {
        const { code, err } = cut(own, ...more);
        expect(code).toBe(3);
        expect(err).toContain('kept');
        expect(names(own)).toEqual(['letter.txt']);
      }
    });
  });

  test('a design that fails is not cut, and says which check stops it', () => {
    inFolder((folder) => {
      const { code, err } = runPan(['cut', example('demo'), '--out', join(folder, 'set')]);
      expect(code).toBe(1);
      expect(err).toContain('nothing was written');
      expect(names(folder)).toEqual([]);
    });
  });
});

describe('what arrives on a pipe', () => {
  test.each([['check'], ['level']])('pan %s --json prints JSON and nothing else', (command) => {
    const { code, out, err } = runPan([command, example('two-wings'), '--json']);
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(Object.keys(JSON.parse(out)).length).toBeGreaterThan(2);
  });

  test('no colour goes to a file, whatever the terminal is called', () => {
    const { out } = runPan(['check', example('two-wings')], undefined, {
      TERM: 'xterm-256color',
      FORCE_COLOR: '',
    });
    expect(out).not.toContain(String.fromCharCode(27));
  });

  test('a reader that stops early ends the command quietly', async () => {
    const child = spawn(process.execPath, [pan, 'check', example('demo'), '--json'], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    child.stdout.destroy();
    let err = '';
    child.stderr.on('data', (piece) => {
      err += String(piece);
    });
    await new Promise((done) => child.on('close', done));
    expect(err).toBe('');
  });

  // /dev/full of Linux takes nothing and says the disk is full.
  test('a full disk behind standard output ends with 3 and says so', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [pan, 'check', example('two-wings')], {
      encoding: 'utf8',
      stdio: ['ignore', full, 'pipe'],
    });
    closeSync(full);
    expect(status).toBe(3);
    expect(stderr).toContain('could not be written');
    expect(stderr).not.toMatch(STACK);
  });

  test('help and version go to standard output and end with 0', () => {
    for (const args of [
      ['--help'],
      ['-h'],
      ['check', '--help'],
      ['new', '--help'],
      ['level', '-h'],
      ['cut', '--help'],
      ['--version'],
    ]) {
      const { code, out, err } = runPan(args);
      expect([code, err]).toEqual([0, '']);
      expect(out.length).toBeGreaterThan(3);
    }
    expect(runPan(['--help']).out).toContain('Exit codes');
  });

  test('help is English and as wide as it was told, in any locale', () => {
    const { out } = runPan(['--help'], undefined, {
      LANG: 'de_DE.UTF-8',
      LC_ALL: 'de_DE.UTF-8',
      COLUMNS: '70',
    });
    expect(out).toContain('Options:');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(70);
  });
});
