import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Ajv, { type ValidateFunction } from 'ajv';
import { commands } from 'pan-cli/commands/list.js';
import { errorPage } from 'pan-cli/terminal/error-page.js';
import { errorCodes } from 'pan-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { readSources } from '../architecture/source-tree.js';
import { buildPan, example, folderFor, runPan } from '../hostile/pan-command.js';
import { panHere } from '../hostile/pan-here.js';

const docs = fileURLToPath(new URL('../../packages/pan-cli/docs/', import.meta.url));
const published = readdirSync(join(docs, 'json')).map((name) => name.replace('.schema.json', ''));

/** The published schema as a program would use it: an independent validator, strict about the schema itself. */
const validatorOf = (name: string): ValidateFunction =>
  new Ajv({ strict: true, strictTypes: false, allErrors: true }).compile(
    JSON.parse(readFileSync(join(docs, 'json', `${name}.schema.json`), 'utf8')),
  );

const faults = (name: string, text: string): readonly string[] => {
  const validate = validatorOf(name);
  validate(JSON.parse(text));
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
};

beforeAll(buildPan);

describe('the published JSON of each command', () => {
  it('has a schema for every command, and one for errors', () => {
    expect([...published].sort()).toEqual([...commands.map(({ name }) => name), 'error'].sort());
  });

  it.each(['check', 'level', 'limits', 'fit', 'dipstick'])(
    'pan %s prints what its schema says',
    async (name) => {
      for (const design of ['demo', 'two-wings']) {
        expect(faults(name, (await panHere([name, example(design), '--json'])).out)).toEqual([]);
      }
    },
  );

  it('pan surge prints what its schema says', async () => {
    const { out } = await panHere(['surge', example('demo'), '--case', 'hard stop', '--json']);
    expect(faults('surge', out)).toEqual([]);
  });

  it('pan new, cut and completion print what theirs say', () =>
    folderFor(async (folder) => {
      const said = async (...args: string[]): Promise<string> => (await panHere([...args, '--json'])).out;
      const file = join(folder, 'mine.yaml');
      expect(faults('new', await said('new', file, '--from', 'two-wings'))).toEqual([]);
      for (const design of [file, example('demo'), example('two-piece')]) {
        const set = join(folder, basename(design));
        expect(faults('cut', await said('cut', design, '--out', `${set} set`))).toEqual([]);
      }
      expect(faults('completion', await said('completion', 'zsh'))).toEqual([]);
    }));

  it('pan worksheet prints what its schema says, with and without a design', () =>
    folderFor(async (folder) => {
      for (const [i, args] of [[], [example('drawn-rail')]].entries()) {
        const { out } = await panHere([
          'worksheet',
          ...args,
          '--out',
          join(folder, `sheet${i}.pdf`),
          '--json',
        ]);
        expect(faults('worksheet', out)).toEqual([]);
      }
    }));

  it('pan report prints what its schema says', () =>
    folderFor((folder) => {
      const out = join(folder, 'page.html');
      expect(faults('report', runPan(['report', example('demo'), '--out', out, '--json']).out)).toEqual([]);
    }));

  it('every error follows its schema', () => {
    for (const args of [
      ['check', 'no-such-file.yaml'],
      ['check', example('demo'), '--jsno'],
      ['new', '/no/such/folder/mine.yaml', '--from', 'demo'],
    ]) {
      expect(faults('error', runPan([...args, '--json']).out)).toEqual([]);
    }
  });

  it.each(['check', 'level'])(
    'the schema of pan %s refuses a number as text and a missing key',
    async (name) => {
      const text = (await panHere([name, example('demo'), '--json'])).out;
      expect(faults(name, text.replace(/"(sharp_L|in_pan_L)": ([\d.]+)/, '"$1": "$2"'))).not.toEqual([]);
      expect(faults(name, text.replace(/"(sharp_L|in_pan_L)"/, '"gone"'))).not.toEqual([]);
    },
  );
});

describe('the page of errors', () => {
  it('is the one the program would write, with every code', () => {
    const page = readFileSync(join(docs, 'errors.md'), 'utf8');
    expect(page).toBe(errorPage());
    for (const code of Object.keys(errorCodes)) expect(page).toContain(`| \`${code}\` |`);
  });

  it('lists no code that the sources never report', () => {
    const text = readSources('packages')
      .filter(({ path }) => !path.endsWith('error-code.ts'))
      .map((file) => file.text)
      .join('\n');
    expect(Object.keys(errorCodes).filter((code) => !text.includes(`'${code}'`))).toEqual([]);
  });
});
