import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { expectWithin } from '../numbers.js';
import { pageCovers, tell } from './accuracy.js';

export type Seen = 'seen' | 'memory' | 'computed';

/** One published value: see reference/README.md. */
export interface Row {
  readonly id: string;
  readonly what: string;
  readonly value: number | string;
  readonly unit: string;
  readonly tolerance: number;
  readonly source: string;
  readonly seen: Seen;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly note?: string;
  readonly disagrees?: string;
}

const folder = fileURLToPath(new URL('../../reference/', import.meta.url));

export const allRows = (): readonly Row[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as Row[]);

const byId = new Map(allRows().map((one) => [one.id, one]));

/** The row of that id. */
export const row = (id: string): Row => {
  const found = byId.get(id);
  if (found === undefined) throw new Error(`No published row ${id}`);
  return found;
};

/** Every row whose id begins with `start` and a dot; a test that walks them all counts as testing each. */
export const rowsUnder = (start: string): readonly Row[] => {
  const found = allRows().filter((one) => one.id.startsWith(`${start}.`));
  if (found.length === 0) throw new Error(`No published rows under ${start}`);
  return found;
};

/**
 * Checks `actual`, in the row's unit, against the row's value within the row's tolerance.
 *
 * @param chords What chords in place of arcs may add to the tolerance, in the same unit.
 */
export const expectPublished = (id: string, actual: number, chords = 0): void => {
  const { value, unit, tolerance, source, seen, what } = row(id);
  if (typeof value !== 'number') throw new Error(`${id} is no number`);
  // A table entry must be met exactly, but for the last bits of a change of unit.
  const allowed = Math.max(tolerance * (1 + 1e-9), 1e-12 * Math.abs(value)) + chords;
  expectWithin(actual, value, allowed, `${what} [${unit}], ${source} (${seen})`);
  const off = Math.abs(actual - value);
  tell({ kind: 'row', id, ours: actual, off, allowed });
  expect(
    pageCovers(id, off, value),
    `reference/accuracy.md says otherwise of ${id}: make it again, \`pnpm accuracy\``,
  ).toBe(true);
};

/** Checks that `text` says the row's word or number. */
export const expectSays = (id: string, text: string): void => {
  expect(text, title(id)).toContain(String(row(id).value));
  tell({ kind: 'row', id, ours: 'says so', off: 0, allowed: 0 });
};

/** Names a test by its row: what, value, source and how it was had. */
export const title = (id: string): string => {
  const { what, value, unit, source, seen } = row(id);
  return `${what}: ${value} ${unit} — ${source} (${seen})`;
};
