import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { allRows } from './rows.js';
import servesLater from './serves-later.json' with { type: 'json' };

const folder = fileURLToPath(new URL('.', import.meta.url));
const sources = readdirSync(folder)
  .filter((name) => name.endsWith('.test.ts') && name !== 'coverage.test.ts')
  .map((name) => readFileSync(folder + name, 'utf8'))
  .join('\n');
const walked = [...sources.matchAll(/rowsUnder\('([^']+)'\)/g)].map((match) => `${match[1]}.`);
const quoted = (id: string): boolean =>
  sources.includes(`'${id}'`) || walked.some((start) => id.startsWith(start));

const ids = allRows().map((one) => one.id);
const waits = (id: string): boolean =>
  servesLater.rows.some((start) => id === start || id.startsWith(`${start}.`));
const tested = ids.filter(quoted);

test('every published row has an id of its own, a source, a flag and a tolerance', () => {
  expect(new Set(ids).size).toBe(ids.length);
  for (const one of allRows()) {
    expect(one.source, one.id).not.toBe('');
    expect(one.what, one.id).not.toBe('');
    expect(['seen', 'memory', 'computed'], one.id).toContain(one.seen);
    expect(one.tolerance, one.id).toBeGreaterThanOrEqual(0);
    expect(typeof one.value === 'string' ? one.unit : Number.isFinite(one.value), one.id).toSatisfy(
      (kind: unknown) => kind === 'text' || kind === true,
    );
  }
});

test('every row that waits for later work exists and has no test yet', () => {
  for (const start of servesLater.rows) {
    const named = ids.filter((id) => id === start || id.startsWith(`${start}.`));
    expect(named.length, start).toBeGreaterThan(0);
    expect(named.filter(quoted), `${start} has a test: take it off the list`).toEqual([]);
  }
});

test('the rows without a test are named', () => {
  const missing = ids.filter((id) => !quoted(id) && !waits(id));
  const later = ids.filter(waits);
  const lines = [
    `${ids.length} published rows: ${tested.length} tested, ${later.length} wait for later work, ${missing.length} without a test`,
    ...missing.map((id) => `  no test: ${id}`),
  ];
  process.stdout.write(`${lines.join('\n')}\n`);
  expect(tested.length + later.length + missing.length).toBe(ids.length);
});
