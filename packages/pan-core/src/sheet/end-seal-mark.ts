import type { Design } from '../design/index.js';
import { arcSegment, type Path } from '../geometry/index.js';
import { railHalfChord } from '../pan/index.js';
import type { Mark } from './part.js';

/**
 * Where an end wall is trimmed to its end plate's arc, on the strip that has this wall.
 *
 * @param path of the strip's inside from the rear on, [x, z]
 * @param length of the blank, from its rear end at 0
 */
export const endSealMarks = (design: Design, path: Path, length: number): readonly Mark[] =>
  design.pan.flange.endSeals.flatMap((seal): readonly Mark[] => {
    const top = seal.end === 'rear' ? path[0]?.from : path[path.length - 1]?.to;
    const { floor } = design.pan;
    const wall = seal.end === 'rear' ? floor[floor.length - 1] : floor[0];
    const atEnd = top !== undefined && Math.abs(top[1]) < 1e-9 && Math.abs(top[0] - wall![0]) < 1e-9;
    if (!atEnd) return [];
    const { radius, centreAboveRail: c, across } = seal;
    const half = railHalfChord(radius, c);
    const turn = 2 * Math.acos(c / radius);
    const arc =
      seal.end === 'rear'
        ? arcSegment([-c, across], [0, across - half], [0, across + half], turn)
        : arcSegment([length + c, across], [length, across + half], [length, across - half], turn);
    return [{ path: [arc], what: 'trim to the end plate after welding' }];
  });
