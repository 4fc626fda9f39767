import type { Unknown } from '../design/index.js';
import type { Check } from './report.js';

/** Each value that must be known and is not, as a check that cannot pass. */
export const unknownChecks = (unknown: readonly Unknown[]): readonly Check[] =>
  unknown.map(
    (u): Check => ({
      id: `known_${u.path.join('_')}`,
      group: groupOf(u.path),
      title: u.what,
      status: 'unknown',
      value: null,
      limit: null,
      unit: '',
      because: `Needed for ${u.needed}.`,
      try: `Measure it and write ${u.path.join('.')} in the design file.`,
      margin: 0,
    }),
  );

const groupOf = (path: Unknown['path']): Check['group'] => {
  if (path[0] === 'oil') return 'oil';
  if (path.includes('crank')) return 'crank';
  return 'fit';
};
