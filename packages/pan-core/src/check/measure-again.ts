import type { Design } from '../design/index.js';
import type { Check } from './report.js';

/** Measurements whose own plus-or-minus decides a check, the tightest first, as sentences. */
export const measureAgain = (design: Design, checks: readonly Check[]): readonly string[] =>
  design.chassis.obstacles
    .flatMap((obstacle) =>
      checks
        .filter(
          (c) => c.group === 'fit' && c.value !== null && c.limit !== null && c.title.endsWith(obstacle.name),
        )
        .map((check) => ({
          obstacle,
          check,
          off: Math.abs((check.value as number) - (check.limit as number)),
        })),
    )
    .filter(({ obstacle, off }) => off <= obstacle.plusMinus)
    .sort((a, b) => a.off - b.off)
    .map(
      ({ obstacle, check }) =>
        `${obstacle.name}: its ± ${obstacle.plusMinus.toFixed(1)} mm decides ${check.title} (${(check.value as number).toFixed(1)} against ${(check.limit as number).toFixed(1)} mm).`,
    );
