import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { accuracyPage } from './accuracy.js';
import { allRows } from './rows.js';

// That the numbers on the page still hold is asked where they are found: see `expectPublished`.

const page = accuracyPage();

test('the accuracy page has every published row once, with its source and how it was had', () => {
  const lines = page.split('\n').filter((line) => line.startsWith('| `'));
  const words = { seen: '(seen)', memory: '(from memory)', computed: '(computed)' };
  for (const { id, source, seen } of allRows()) {
    const found = lines.filter((line) => line.startsWith(`| \`${id}\` |`));
    expect(found, id).toHaveLength(1);
    expect(found[0], id).toContain(`${source.replaceAll('|', '\\|')} ${words[seen]} |`);
  }
  expect(lines).toHaveLength(allRows().length);
});

// The page rounds a difference up to two digits.
test('no difference on it is larger than what is allowed beside it', () => {
  for (const line of page.split('\n').filter((text) => text.startsWith('| `'))) {
    const [off, allowed] = line.split(' | ').slice(4, 6).map(Number);
    if (!Number.isNaN(off)) expect(off, line).toBeLessThanOrEqual((allowed as number) * 1.1);
  }
});

test('every model with limits of its own has them on the page', () => {
  const file = new URL('../../packages/pan-core/src/check/formulas.json', import.meta.url);
  const { rows } = JSON.parse(readFileSync(file, 'utf8')) as { rows: { numbers: string; holds?: string }[] };
  const limited = rows.filter(({ holds }) => holds !== undefined);
  expect(limited.length).toBeGreaterThan(15);
  for (const { holds } of limited) expect(page).toContain(`${holds}`);
});
