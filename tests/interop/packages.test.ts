import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const packages = fileURLToPath(new URL('../../packages/', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pan-packages-'));
const run = (program: string, ...args: readonly string[]): string => {
  const { status, stdout, stderr } = spawnSync(program, args, { cwd: folder, encoding: 'utf8' });
  if (status !== 0) throw new Error(`${program} ${args.join(' ')} ended with ${status}: ${stdout}${stderr}`);
  return stdout;
};

/** Both packages as npm would publish them, installed by npm into an empty folder outside this one. */
beforeAll(() => {
  const packed = ['pan-core', 'pan-cli'].map((name) => {
    const told = run('npm', 'pack', join(packages, name), '--json', '--pack-destination', folder);
    // What the package's own steps print comes before the data.
    return (JSON.parse(told.slice(told.lastIndexOf('\n[') + 1)) as [{ readonly filename: string }])[0]
      .filename;
  });
  writeFileSync(join(folder, 'package.json'), '{"name": "a-folder-of-somebody", "private": true}');
  const options = ['--no-audit', '--no-fund', '--prefer-offline', '--loglevel=error'];
  run('npm', 'install', ...options, ...packed.map((name) => `./${name}`));
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const pan = (...args: readonly string[]): string => run(join(folder, 'node_modules/.bin/pan'), ...args);

describe('the packages as npm installs them', () => {
  it('the command line writes, checks and cuts a design', () => {
    expect(pan('--version').trim()).toBe('0.1.0');
    pan('new', 'mine.yaml', '--from', 'two-wings');
    expect(readdirSync(folder)).toContain('pan-design.schema.json');
    expect(JSON.parse(pan('check', 'mine.yaml', '--json')).verdict).not.toBe('fail');
    pan('cut', 'mine.yaml', '--out', 'set');
    expect(readdirSync(join(folder, 'set'))).toContain('manifest.json');
    pan('report', 'mine.yaml', '--out', 'page.html');
    expect(readFileSync(join(folder, 'page.html'), 'utf8')).toContain('<style');
    // What the bundle only looks up when it is needed: the font above, the reader of drawings here.
    const drawn = JSON.parse(pan('level', 'node_modules/pan-cli/examples/drawn-rail.yaml', '--json'));
    expect(drawn.oil.in_pan_L).toBeGreaterThan(1);
  });

  it.each(['check', 'level', 'flat-parts'])('the example %s of the library runs', (name) => {
    cpSync(join(folder, 'node_modules/pan-core/examples'), join(folder, 'tried'), { recursive: true });
    const shown = run(process.execPath, join(folder, 'tried', `${name}.mjs`));
    expect(shown.split('\n').length).toBeGreaterThan(3);
    expect(shown).not.toMatch(/undefined|NaN/);
  });

  it('what the readme of the library shows runs as it stands', () => {
    const readme = readFileSync(join(folder, 'node_modules/pan-core/README.md'), 'utf8');
    const shown = /```js\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
    const file = join(folder, 'tried', 'readme.mjs');
    writeFileSync(
      file,
      `import { design as keys } from './design.mjs';\n${shown}\nconsole.log(report.checks.length);`,
    );
    expect(Number(run(process.execPath, file))).toBeGreaterThan(10);
  });

  it('types of the library resolve for a program of somebody else', () => {
    const text =
      "import { checkDesign, readDesign } from 'pan-core';\nexport const n: number = checkDesign(readDesign({})).checks.length;\n";
    writeFileSync(join(folder, 'mine.mts'), text);
    const tsc = fileURLToPath(new URL('../../node_modules/typescript/bin/tsc', import.meta.url));
    const compilerOptions = { noEmit: true, strict: true, module: 'nodenext', target: 'es2022', types: [] };
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: ['mine.mts'] }));
    expect(run(process.execPath, tsc, '--pretty', 'false')).toBe('');
  });

  it('carries no build leftovers and a licence', () => {
    for (const name of ['pan-core', 'pan-cli']) {
      const files = readdirSync(join(folder, 'node_modules', name), { recursive: true }).map(String);
      expect(files).toContain('LICENSE');
      expect(files.filter((file) => /tsbuildinfo|\.map$|node_modules/.test(file))).toEqual([]);
    }
  });
});
