import { PanError, type Problem } from '../../errors/index.js';
import { nearestWord } from '../../units/index.js';
import { settableLimits } from '../check-id.js';
import type { Design } from '../design.js';
import type { LimitKeys } from '../keys/limit-keys.js';

/** `mm2` is written with a raised figure for people. */
const shown = (unit: string): string => unit.replace('2', '²');

/**
 * The limits that a file sets, by check.
 *
 * @throws PanError `input-key` for a check that the design does not have, `input-unit` for a unit of another kind
 */
export const resolveLimits = (keys: LimitKeys, design: Design): Design['limits'] => {
  const known = settableLimits(design);
  const problems: Problem[] = [];
  for (const [id, { unit }] of Object.entries(keys)) {
    const path = ['limits', id];
    const own = known.get(id);
    if (own === undefined) {
      const near = nearestWord(id, [...known.keys()]);
      problems.push({
        code: 'input-key',
        path,
        message: `limits.${id} is no check of this design whose limit can be set.`,
        expected: 'the id of a check, as pan check --json prints it',
        found: id,
        advice:
          near === null ? 'Leave it out, or take an id from pan check --json.' : `Did you mean ${near}?`,
      });
    } else if (unit !== null && unit !== own) {
      problems.push({
        code: 'input-unit',
        path,
        message: `limits.${id} is given in ${shown(unit)}; that check is in ${shown(own)}.`,
        expected: `a limit in ${shown(own)}`,
        unit: own,
        advice: 'Give a bare number or a value of that kind.',
      });
    }
  }
  if (problems.length > 0) throw new PanError(problems);
  return Object.fromEntries(Object.entries(keys).map(([id, { value }]) => [id, value]));
};
