import { mkdirSync, writeFileSync } from 'node:fs';

/** What a long random run found, as the accuracy page lists it. */
export interface RunRecord {
  readonly what: string;
  readonly count: number;
  readonly seed: number;
  readonly found: string;
}

/** Keeps what a long run found in reference/runs, where RECORD=1 asks for it; run from the root of the repository. */
export const keepRecord = (name: string, record: RunRecord): void => {
  if (process.env.RECORD !== '1') return;
  mkdirSync('reference/runs', { recursive: true });
  const kept = { ...record, node: process.version };
  writeFileSync(`reference/runs/${name}.json`, `${JSON.stringify(kept, null, 2)}\n`);
};
