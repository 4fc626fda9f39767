import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { buildPan, example, pan } from './pan-command.js';

beforeAll(buildPan);

const ESC = String.fromCharCode(27);
const CTRL_C = String.fromCharCode(3);
const ESCAPES = new RegExp(`${ESC}\\[[\\d;?]*[A-Za-z]`, 'g');

const quoted = (word: string): string => `'${word.replaceAll("'", "'\\''")}'`;

interface Turn {
  readonly wait: string;
  readonly type: string;
}

/** Runs the command on a pseudo-terminal (script(1) of util-linux), answering each prompt as it appears. */
const onTerminal = (args: readonly string[], columns: number, turns: readonly Turn[] = [], env = {}) =>
  new Promise<{ readonly code: number | null; readonly shown: string }>((done) => {
    const line = `stty cols ${columns} rows 60; ${[process.execPath, pan, ...args].map(quoted).join(' ')}`;
    const child = spawn('script', ['-qec', line, '/dev/null'], {
      env: { PATH: process.env.PATH, TERM: 'xterm', SHELL: '/bin/sh', ...env },
    });
    const rest = [...turns];
    // A character may come in two pieces.
    child.stdout.setEncoding('utf8');
    let shown = '';
    let read = 0;
    child.stdout.on('data', (piece) => {
      shown += piece;
      const next = rest[0];
      if (next === undefined || !shown.slice(read).includes(next.wait)) return;
      rest.shift();
      read = shown.length;
      // A terminal that has just drawn a prompt needs a moment before it listens.
      setTimeout(() => child.stdin.write(next.type), 60);
    });
    child.on('close', (code) => done({ code, shown }));
  });

const inTemporary = async (use: (folder: string) => Promise<void>): Promise<void> => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-terminal-'));
  try {
    await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

const answers: readonly Turn[] = ['690', '250', '62', '96', '41', '3', '58', '320', '150', '283'].map(
  (value, i) => ({
    wait: `${i + 1}/10`,
    type: `${value}\r`,
  }),
);

test('ten answers make a design; one that cannot be read is asked for again', async () => {
  await inTemporary(async (folder) => {
    const file = join(folder, 'mine.yaml');
    const wrong: readonly Turn[] = [
      { wait: '1/10', type: '6 90\r' },
      { wait: 'number and a unit', type: '\u007f\u007f\u007f\u007f690\r' },
    ];
    const { code, shown } = await onTerminal(['new', file], 80, [...wrong, ...answers.slice(1)]);
    expect(shown).toContain('Ten measurements');
    expect(code).toBe(0);
    expect(readFileSync(file, 'utf8')).toContain('rail: {length: 690, width: 250');
  });
});

test('Ctrl-C in the middle of the questions writes nothing and shows no stack', async () => {
  await inTemporary(async (folder) => {
    const file = join(folder, 'mine.yaml');
    const { code, shown } = await onTerminal(['new', file], 80, [
      ...answers.slice(0, 2),
      { wait: '3/10', type: CTRL_C },
    ]);
    expect(shown).toContain('Nothing was written');
    expect(shown).not.toMatch(/at .+:\d+:\d+/);
    expect(code).toBe(2);
    expect(existsSync(file)).toBe(false);
  });
});

test('on a terminal there is colour, and NO_COLOR takes it away and nothing else', async () => {
  const coloured = await onTerminal(['check', example('two-wings')], 80);
  const bare = await onTerminal(['check', example('two-wings')], 80, [], { NO_COLOR: '1' });
  expect(coloured.shown).toContain(`${ESC}[`);
  expect(bare.shown).not.toContain(ESC);
  const words = (text: string): string => text.replace(ESCAPES, '').replace(/[ \r]+$/gm, '');
  expect(words(coloured.shown)).toBe(words(bare.shown));
});

test.each([60, 80, 120])(
  'a terminal of %s columns is never overrun, and at most 100 are used',
  async (width) => {
    for (const args of [
      ['check', example('demo')],
      ['level', example('demo'), '--braking', '0.9'],
      ['--help'],
    ]) {
      const { shown } = await onTerminal(args, width, [], { NO_COLOR: '1' });
      const longest = Math.max(...shown.split(/\r?\n/).map((line) => [...line].length));
      expect(longest).toBeLessThanOrEqual(Math.min(width, 100));
      expect(longest).toBeGreaterThan(Math.min(width, 100) - 25);
    }
  },
);
