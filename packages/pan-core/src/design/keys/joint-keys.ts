import { assumedText } from '../default.js';
import {
  checked,
  choice,
  either,
  isList,
  isScalar,
  list,
  optional,
  section,
  text,
  tuple,
} from '../field/index.js';
import { NAME_LENGTH, nameField, oneOf } from './items.js';
import type { Kit } from './kit.js';

export const jointsField = (k: Kit) =>
  section('how edges are joined and folds are worked out', {
    welded: optional(
      list(
        'floor points that are welded instead of folded, as written in floor_inside',
        k.point2('floor point'),
        { most: 60 },
      ),
    ),
    bend_test: optional(
      section('a test bend of 90 deg in the same sheet', {
        flat: k.size('length before folding'),
        legs: tuple('outside lengths of both legs after folding', [k.size('leg'), k.size('leg')]),
      }),
    ),
    allowance: optional(
      choice('rule for the length of a bend', ['k', 'din', 'handbook']),
      assumedText('bend rule'),
    ),
    fold: optional(
      list('faces that fold along the edge they share instead of being welded', facePair(), { most: 40 }),
    ),
    weld: optional(
      list('faces that are welded along the edge they share instead of folding', facePair(), { most: 40 }),
    ),
    split: optional(splitField(k)),
  });

/** Seams of parts that are cut apart; a part too large for sheet or brake is cut where it is best unless told. */
const splitField = (k: Kit) =>
  either('parts cut into pieces for a small sheet or brake', [
    { when: isScalar, field: choice('no part is cut apart by itself', ['never']) },
    {
      when: isList,
      field: list(
        'seams that are asked for, and parts that stay whole',
        checked(
          section('a seam, or a part that stays whole', {
            part: text('part, as the cut list calls it', NAME_LENGTH, 'belly'),
            across_at: optional(k.length('distance of a seam across the blank from its left edge as drawn')),
            lengthwise_at: optional(
              k.length('distance of a seam along the blank from its lower edge as drawn'),
            ),
            never: optional(choice('the part is not cut apart', ['yes'])),
            name: optional(nameField('shallow seam')),
          }),
          ({ across_at, lengthwise_at, never }, report) => oneOf({ across_at, lengthwise_at, never }, report),
        ),
        { most: 40 },
      ),
    },
  ]);

/** Two faces by name; the pan's own list stands in the message when one of them is not known. */
const facePair = () => {
  const face = text(
    'face of the pan, such as sump floor, side left, right wing top',
    NAME_LENGTH,
    'sump floor',
  );
  return tuple('two faces that share an edge', [face, face]);
};
