import type { Path, Segment } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';

/** Where a leaf's own axes lie in the blank: its origin, and the way its u runs. */
export interface Placement {
  readonly at: Vec2;
  readonly along: Vec2;
}

export const onBlank = ({ at, along }: Placement, [s, t]: Vec2): Vec2 => [
  at[0] + s * along[0] - t * along[1],
  at[1] + s * along[1] + t * along[0],
];

/** A path in a leaf's own axes where it lies in the blank. */
export const placePath = (path: Path, placement: Placement): Path =>
  path.map((s): Segment => {
    const ends = { from: onBlank(placement, s.from), to: onBlank(placement, s.to) };
    return s.kind === 'line'
      ? { kind: 'line', ...ends }
      : { ...s, ...ends, centre: onBlank(placement, s.centre) };
  });
