import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { commands, sharedOptions } from 'pan-cli/commands/list.js';
import { beforeAll, expect, test } from 'vitest';
import { buildPan, inFolder, runPan } from './pan-command.js';

beforeAll(buildPan);

/** What bash itself offers for a line, the last word being the one to complete. */
const offered = (...words: readonly string[]): readonly string[] =>
  inFolder((folder) => {
    const script = join(folder, 'pan-completion');
    writeFileSync(script, runPan(['completion', 'bash']).out);
    const ask =
      'source "$1"; shift; COMP_WORDS=(pan "$@"); COMP_CWORD=$#; _pan; for it in "$' +
      '{COMPREPLY[@]}"; do echo "$it"; done';
    const args = ['--noprofile', '--norc', '-u', '-c', ask, 'bash', script, ...words];
    const { status, stdout, stderr } = spawnSync('bash', args, { encoding: 'utf8' });
    expect([status, stderr]).toEqual([0, '']);
    return stdout.split('\n').filter((line) => line !== '');
  });

test('bash offers every command, and those that begin as typed', () => {
  expect(offered('')).toEqual([...commands.map(({ name }) => name), '--help', '--version']);
  expect(offered('che')).toEqual(['check']);
});

test.each(commands)(
  'bash offers every option of $name, and none that is given already',
  ({ name, options }) => {
    const all = [...Object.keys({ ...options, ...sharedOptions }), 'help'].map((option) => `--${option}`);
    expect(offered(name, 'x', '--')).toEqual(all);
    expect(offered(name, 'x', '--json', '--')).toEqual(all.filter((option) => option !== '--json'));
  },
);

test('bash offers the few words an option or a command takes', () => {
  expect(offered('new', '--from', '')).toEqual(['demo', 'two-wings', 'inches']);
  expect(offered('check', '--units', 'i')).toEqual(['in']);
  expect(offered('check', '--units', '=', 'i')).toEqual(['in']);
  expect(offered('completion', '')).toEqual(['bash', 'zsh']);
});

test('bash is left to offer files where anything may stand', () => {
  expect(offered('check', '')).toEqual([]);
  expect(offered('cut', 'a.yaml', '--out', '')).toEqual([]);
});

// No zsh on every machine: what it reads is at least balanced quoting, which every sh can parse as words.
test('the zsh script names every command and option with what it does', () => {
  const { code, out } = runPan(['completion', 'zsh']);
  expect(code).toBe(0);
  expect(out).toMatch(/^#compdef pan\n/);
  for (const { name, options } of commands) {
    expect(out).toContain(`    '${name}:`);
    for (const option of Object.keys(options)) expect(out).toContain(`'--${option}[`);
  }
  const quotes = spawnSync('bash', ['-n', '-c', out.replace(/^.*\$\{(words|funcstack)\[.*$/gm, ':')], {
    encoding: 'utf8',
  });
  expect([quotes.status, quotes.stderr]).toEqual([0, '']);
});

test('another shell is refused with those there are', () => {
  const { code, err } = runPan(['completion', 'fsh']);
  expect(code).toBe(2);
  expect(err).toContain('bash or zsh');
});
