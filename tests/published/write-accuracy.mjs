// Writes reference/accuracy.md from what the tests find: runs those that tell it, then lays their findings beside the
// published rows. No number on the page is typed by hand.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { accuracyPage } from './accuracy-page.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../..');
const json = (path) => JSON.parse(readFileSync(path, 'utf8'));

const telling = readdirSync(join(root, 'tests'), { recursive: true })
  .map(String)
  .filter((name) => name.endsWith('.test.ts') && !/published.(coverage|accuracy)/.test(name))
  .filter((name) =>
    /tellWorst|expectPublished|expectSays/.test(readFileSync(join(root, 'tests', name), 'utf8')),
  );

const folder = mkdtempSync(join(tmpdir(), 'pan-accuracy-'));
try {
  const { status } = spawnSync('npx', ['vitest', 'run', ...telling.map((name) => `tests/${name}`)], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, PAN_ACCURACY: folder },
  });
  if (status !== 0) throw new Error('A test failed: the page stays as it was.');
  const told = readdirSync(folder)
    .flatMap((name) => readFileSync(join(folder, name), 'utf8').trim().split('\n'))
    .map((line) => JSON.parse(line));
  const reference = join(root, 'reference');
  const subjects = readdirSync(reference)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => ({ name: name.replace('.json', ''), rows: json(join(reference, name)) }));
  const records = join(reference, 'runs');
  const runs = (existsSync(records) ? readdirSync(records) : [])
    .sort()
    .map((name) => json(join(records, name)));
  const models = json(join(root, 'packages/pan-core/src/check/formulas.json')).rows;
  writeFileSync(join(reference, 'accuracy.md'), accuracyPage({ subjects, told, runs, models }));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
