import type { Baffle, Design } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';
import { joinsOnce, type Part } from '../sheet/index.js';
import { plainLine } from './seam-line.js';
import type { BareSeam } from './weld-prep.js';

/** Seams by which the pieces of parts that were cut apart are joined again, each once. */
export const pieceSeams = (design: Design, parts: readonly Part[]): readonly BareSeam[] => {
  const joins = joinsOnce(parts);
  return joins.map(({ part, join }): BareSeam => {
    const { seam, whole, other, length, places, lines } = join;
    // One cut may part more than two pieces: its stretches are then told apart by what they join.
    const alike = joins.filter((one) => one.join.seam === seam && one.join.whole === whole);
    const over = design.baffles.filter((baffle) => places.some((p) => covers(baffle, p)));
    return {
      name: alike.length > 1 ? `${seam}, ${part.name} to ${other}` : seam,
      between: [part.name, other],
      joint: 'butt',
      side: 'outside',
      run: 'continuous',
      length,
      lines: lines.map(plainLine),
      size: part.thickness,
      step: 'pieces',
      closedBy: over.length === 0 ? null : over.map((baffle) => baffle.name).join(' and '),
    };
  });
};

/** Whether a lid lies over a place of the pan's inside. */
const covers = (baffle: Baffle, [x, y, z]: Vec3): boolean => {
  if (baffle.kind !== 'lid') return false;
  const [low, high] = baffle.span ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return x > baffle.rear && x < baffle.front && y > low && y < high && z < -baffle.down;
};
