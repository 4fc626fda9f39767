import type { Check, CheckReport, Status } from 'pan-core/check/index.js';
import type { Design } from 'pan-core/design/index.js';
import { type CutFile, cutSet, type PagePrinter } from 'pan-core/drawing/index.js';
import { buildPan, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part } from 'pan-core/sheet/index.js';

export const partsOf = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};

/** A report with one check for each status given, whatever the design. */
export const reportOf = (title: string, ...statuses: readonly Status[]): CheckReport => {
  const checks = statuses.map(
    (status, i): Check => ({
      id: `${status}_${i}`,
      group: 'fit',
      title: 'a check',
      status,
      value: 1,
      limit: 2,
      unit: 'mm',
      because: 'It was made up.',
      try: '',
      margin: -1,
    }),
  );
  const count = (status: Status): number => checks.filter((c) => c.status === status).length;
  return {
    title,
    verdict: 'pass',
    counts: { pass: count('pass'), warn: count('warn'), fail: count('fail'), unknown: count('unknown') },
    first: null,
    next: null,
    capacity: { to_rail_L: 1, sharp_L: 1, shallow_L: 0, sump_L: 1, never_returns_L: 0 },
    levels: { stopped_mm: 1, running_mm: 1 },
    oil: { poured_L: 1, stopped_in_pan_L: 1, running_in_pan_L: 1 },
    checks,
    assumed: [],
    unknown: [],
    supply: null,
    engine_moves: '',
    crank_dip: [],
    measureAgain: [],
    sayings: [],
    rests_on: {},
  };
};

/** Pages as text, for tests that ask what pages say and not how they look. */
export const printWords: PagePrinter = async (set) => new TextEncoder().encode(JSON.stringify(set));

export const setOf = (design: Design, ...statuses: readonly Status[]): Promise<readonly CutFile[]> =>
  cutSet(buildPan(design), partsOf(design), reportOf(design.title, ...statuses), {
    paper: 'a4',
    print: printWords,
  });

export const textAt = (files: readonly CutFile[], path: string): string => {
  const content = files.find((file) => file.path === path)?.content;
  if (typeof content !== 'string') throw new Error(`no text at ${path}`);
  return content;
};
