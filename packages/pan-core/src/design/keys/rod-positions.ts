import { list, type Report } from '../field/index.js';
import { rodEnds } from './items.js';
import type { Kit } from './kit.js';

/** Where a rod's ends go through its travel, such as a steering link at both locks. */
export const positionsField = (k: Kit) =>
  list(
    'further places of the rod’s ends through its travel, in order: [[[x, y, z], [x, y, z]], …]',
    rodEnds(k),
    {
      fewest: 1,
      most: 20,
    },
  );

/** Reports positions without a rod, or beside a straight travel. */
export const positionsGoWithRod = (
  { rod, travel, positions }: { rod?: unknown; travel?: unknown; positions?: unknown },
  report: Report,
): void => {
  if (positions === undefined || (rod !== undefined && travel === undefined)) return;
  report(
    rod === undefined
      ? {
          code: 'input-key',
          says: 'belongs to a rod, and there is none here',
          expected: 'rod beside positions',
        }
      : { code: 'input-key', says: 'cannot stand beside travel', expected: 'travel or positions' },
    ['positions'],
  );
};
