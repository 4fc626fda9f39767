import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  type Batch,
  checkDesign,
  type FreeWish,
  posed,
  readDesign,
  requestFor,
  runSearch,
  type SizeReport,
  type SizeRequest,
  sizeReport,
  verdictAt,
} from 'pan-core';
import { conflictIn } from 'pan-core/size/conflict.js';
import { bestDesign, sideEffort } from 'pan-core/size/search.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

const file = (name: string): unknown =>
  parse(
    readFileSync(
      fileURLToPath(new URL(`../../packages/pan-cli/examples/${name}.yaml`, import.meta.url)),
      'utf8',
    ),
  );

const answerTo = (raw: unknown) => {
  const pose = posed(raw);
  return ({ request, questions }: Batch) => questions.map((one) => verdictAt(pose(request), one));
};

const sized = (raw: unknown, request: SizeRequest): SizeReport =>
  runSearch(sizeReport(posed(raw), { request, trade: false, baffles: false }), answerTo(raw));

/** Every whole step of one free value, each asked about on its own. */
const everyStep = (raw: unknown, request: SizeRequest, count: number) => {
  const problem = posed(raw)(request);
  return Array.from({ length: count + 1 }, (_, k) =>
    verdictAt(problem, { at: [k / count], enough: Number.POSITIVE_INFINITY }),
  );
};

const wish = (what: string, from: number, to: number, step: number): FreeWish => ({ what, from, to, step });

describe('a sized pan', () => {
  it('is as shallow as trying every 4 mm says, and passes when checked on its own', () => {
    const raw = file('two-wings');
    const request = requestFor('least depth', [wish('sump depth', 120, 180, 4)]);
    const all = everyStep(raw, request, 15);
    const best = Math.min(...all.filter(({ miss }) => miss === 0).map(({ cost }) => cost * 10));
    const report = sized(raw, request);
    expect(report.passes).toBe(true);
    // Enumeration of all 16 depths; the answer is one of them.
    expect(report.figure).toBeCloseTo(best, 6);
    expect(checkDesign(readDesign(report.data)).counts.fail).toBe(0);
  });

  it('names a smallest set of checks that cannot all hold', () => {
    const raw = file('demo');
    const request = requestFor('least depth', [wish('sump depth', 160, 190, 2)]);
    const missed = everyStep(raw, request, 15)
      .filter(({ whole }) => whole)
      .map(({ rows }) => new Set(rows.filter((row) => row.missed).map(({ id }) => id)));
    const pose = posed(raw);
    const { best, seen: trials } = runSearch(bestDesign(pose(request), sideEffort(1)), answerTo(raw));
    expect(best.verdict.miss).toBeGreaterThan(0);
    const conflict = runSearch(conflictIn(pose, request, trials), answerTo(raw));
    expect(missed.every((one) => conflict.some((id) => one.has(id)))).toBe(true);
    for (const left of conflict) {
      const rest = conflict.filter((id) => id !== left);
      expect(
        missed.some((one) => rest.every((id) => !one.has(id))),
        `without ${left}`,
      ).toBe(true);
    }
  });
});
