import type { Design } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { type Law, subjectOf } from './pan-law.js';
import { randomFrom } from './random.js';
import { randomDesign } from './random-design.js';
import { shapeOf, shrunk } from './shrink-design.js';

/** How one pan stood under one law: how far off, or null where the pan is refused or the law asks nothing. */
export const trial = (design: Design, law: Law, seed: number): number | null => {
  try {
    return law.off(subjectOf(design), randomFrom(seed ^ 0x1a75));
  } catch (error) {
    if (error instanceof PanError) return null;
    throw error;
  }
};

/** Never written as `off > allowed`, which a NaN would slip through. */
const within = (off: number | null, law: Law): boolean => off === null || off <= law.allowed;

const breaks = (design: Design, law: Law, seed: number): boolean => {
  try {
    return !within(trial(design, law, seed), law);
  } catch {
    return true;
  }
};

/** What was found of many pans: the worst under each law, and every failure with its plainest design. */
export interface Trials {
  readonly pans: number;
  readonly refused: number;
  readonly worst: ReadonlyMap<string, number>;
  readonly failures: readonly string[];
}

/**
 * Tries random pans from a seed on.
 *
 * @param chosen Which laws the pan of that seed stands under.
 */
export const tryPans = (seed: number, count: number, chosen: (seed: number) => readonly Law[]): Trials => {
  const worst = new Map<string, number>();
  const failures: string[] = [];
  let refused = 0;
  for (let s = seed; s < seed + count; s++) {
    const design = randomDesign(s);
    const laws = chosen(s);
    let built = false;
    for (const law of laws) {
      const fault = (why: string): void => {
        const plain = shrunk(design, (d) => breaks(d, law, s));
        failures.push(`seed ${s}: ${law.name}: ${why}\n  plainest: ${shapeOf(plain)}`);
      };
      try {
        const off = trial(design, law, s);
        if (off === null) continue;
        built = true;
        if (within(off, law)) worst.set(law.name, Math.max(worst.get(law.name) ?? 0, off));
        else fault(`${off} ${law.unit}, allowed ${law.allowed}`);
      } catch (error) {
        fault(String(error));
      }
    }
    if (!built) refused++;
  }
  return { pans: count, refused, worst, failures };
};
