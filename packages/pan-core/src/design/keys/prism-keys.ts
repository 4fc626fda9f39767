import { checked, choice, list, section } from '../field/index.js';
import { crossing, doubledPoint } from '../outline.js';
import type { Kit } from './kit.js';

export const prismField = (k: Kit) =>
  checked(
    section('a flat outline carried straight along an axis: a folded rail, a channel, a bracket', {
      along: choice('axis it runs along', ['x', 'y', 'z']),
      profile: list(
        'its corners in order, in the other two axes: [[y, z], …] along x, [[x, z], …] along y, [[x, y], …] along z',
        k.point2('corner'),
        { fewest: 3, most: 200 },
      ),
      from: k.length('where it begins along the axis'),
      to: k.length('where it ends'),
    }),
    ({ profile, from, to, along }, report) => {
      const doubled = doubledPoint(profile);
      if (doubled !== null) {
        report(
          {
            code: 'input-range',
            says: `is the same point as ${doubled === 0 ? 'the last one' : 'the one before it'}`,
            advice: 'Leave one of them out; the outline closes by itself.',
          },
          ['profile', doubled],
        );
        return;
      }
      const cut = crossing(profile);
      if (cut !== null) {
        report(
          {
            code: 'input-range',
            says: `crosses itself: its edges from corner ${cut[0]} and from corner ${cut[1]} meet`,
            advice: 'List the corners in order around the outline.',
          },
          ['profile'],
        );
      }
      if (from === to) {
        report(
          {
            code: 'input-range',
            says: `has no length: it begins and ends at ${along} = ${from} mm`,
            expected: 'two ends apart',
          },
          ['to'],
        );
      }
    },
  );
