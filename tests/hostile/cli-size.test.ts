import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildPan, example, folderFor, names, pan, runPan, STACK } from './pan-command.js';

beforeAll(buildPan);

/** Ctrl-C after so many ms. */
const stopped = (args: readonly string[], cwd: string, after: number) =>
  new Promise<{ readonly code: number | null; readonly out: string; readonly err: string }>((settle) => {
    const run = spawn(process.execPath, [pan, ...args], { cwd });
    const heard = { out: '', err: '' };
    run.stdout.on('data', (text) => {
      heard.out += text;
    });
    run.stderr.on('data', (text) => {
      heard.err += text;
    });
    run.once('close', (code) => settle({ code, ...heard }));
    setTimeout(() => run.kill('SIGINT'), after);
  });

describe('pan size, stopped', () => {
  it('by Ctrl-C writes the best so far, which passes by itself, and says so', () =>
    folderFor(async (folder) => {
      const args = ['size', example('two-wings'), '--for', 'least depth', '--out', 'sized.yaml'];
      let found = await stopped(args, folder, 4000);
      // On a busy machine nothing better may have been found yet: it is given longer.
      for (const after of [12_000, 36_000]) {
        if (!found.out.startsWith('PASSES AS IT STANDS')) break;
        rmSync(join(folder, 'sized.yaml'), { force: true });
        found = await stopped(args, folder, after);
      }
      const { code, out, err } = found;
      expect(code, err).toBe(0);
      expect(out).toMatch(/^PASSES, LEAST DEPTH: \d/);
      expect(out).toMatch(/Stopped after \d+ designs: the best so far/);
      expect(err).toBe('Wrote sized.yaml.\n');
      expect(names(folder)).toEqual(['sized.yaml']);
      const checked = runPan(['check', 'sized.yaml'], folder);
      expect(checked.code, checked.out).toBe(0);
      // Every comment of the file stands where it stood.
      const comments = (text: string) => text.match(/#.*$/gm);
      expect(comments(readFileSync(join(folder, 'sized.yaml'), 'utf8'))).toEqual(
        comments(readFileSync(example('two-wings'), 'utf8')),
      );
    }));

  it('by --time before anything passes writes nothing and exits 1', () =>
    folderFor((folder) => {
      const { code, out, err } = runPan(
        ['size', example('demo'), '--time', '1.5 s', '--out', 'sized.yaml'],
        folder,
      );
      expect(code, err).toBe(1);
      expect(out).toMatch(/^NOTHING PASSES SO FAR among the \d+ designs tried/);
      expect(out).toContain('nothing is written');
      expect(err).toContain('sized.yaml was not written: no design was found that passes');
      expect(existsSync(join(folder, 'sized.yaml'))).toBe(false);
    }));

  it.each([
    [['--time', 'soon'], /--time soon/],
    [['--time', '-3 s'], /must lie between 0 and 24 h/],
    [['--for', 'less depth'], /Did you mean "least depth"/],
    [['--free', 'sump dept: 140..180'], /did you mean "sump depth"/],
    [['--free', 'sump depth: 180..140'], /holds nothing/],
    [['--free', 'fill, fill'], /set free twice/],
    [['--svg', 'a.svg'], /--trade was not given/],
  ])('refuses %j with words', (args, words) =>
    folderFor((folder) => {
      const { code, err } = runPan(['size', example('demo'), ...args], folder);
      expect(code).toBe(2);
      expect(err).toMatch(words);
      expect(err).not.toMatch(STACK);
      expect(names(folder)).toEqual([]);
    }),
  );
});
