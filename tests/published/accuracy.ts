import { appendFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** What a test found beside a published row, or as the worst of many random cases; the accuracy page is made of these. */
export type Told =
  | {
      readonly kind: 'row';
      readonly id: string;
      readonly ours: number | string;
      readonly off: number;
      readonly allowed: number;
    }
  | {
      readonly kind: 'worst';
      readonly what: string;
      readonly value: number;
      readonly allowed: number;
      readonly unit: string;
      readonly against: string;
    };

/** The folder that findings go to while the page is being made: nothing is kept in a common run. */
const folder = process.env.PAN_ACCURACY;

/** Keeps a finding for the accuracy page. */
export const tell = (told: Told): void => {
  if (folder !== undefined) appendFileSync(join(folder, `${process.pid}.jsonl`), `${JSON.stringify(told)}\n`);
};

/** The page as it stands in the repository. */
export const accuracyPage = (): string =>
  readFileSync(fileURLToPath(new URL('../../reference/accuracy.md', import.meta.url)), 'utf8');

/** The largest difference that the page claims for each row, by id; null where it claims none. */
export const claimed = (page: string): ReadonlyMap<string, number | null> =>
  new Map(
    page
      .split('\n')
      .filter((line) => line.startsWith('| `'))
      .map((line) => {
        const cells = line.split(' | ').map((cell) => cell.trim());
        const off = cells[4] ?? '';
        return [cells[0]?.slice(3, -1) ?? '', off === '—' ? null : Number(off)];
      }),
  );

const page = folder === undefined ? claimed(accuracyPage()) : new Map<string, number | null>();

/** Whether the page's claim for that row still covers what a test finds: it may do better, never worse. */
export const pageCovers = (id: string, off: number, value: number): boolean => {
  if (folder !== undefined) return true;
  const claim = page.get(id);
  // Two digits of the difference are printed, and the last bits differ by machine.
  return typeof claim === 'number' && off <= claim * 1.06 + 1e-12 * Math.abs(value);
};

/** Prints the worst of many random cases beside what is allowed, and keeps it for the accuracy page. */
export const tellWorst = (
  what: string,
  value: number,
  allowed: number,
  unit: string,
  against: string,
): void => {
  process.stdout.write(`${what}: ${value} ${unit} of ${allowed} allowed, ${against}\n`);
  tell({ kind: 'worst', what, value, allowed, unit, against });
};
