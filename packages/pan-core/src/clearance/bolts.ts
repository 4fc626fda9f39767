import type { Design } from '../design/index.js';
import { freeze, type Vec3 } from '../numeric/index.js';
import { BEAD_LEG, fastenerFor, type OuterSolid } from '../pan/index.js';
import { bodyOf, faceNameAt } from './body.js';
import { type Clearance, fixedClearance } from './clearance.js';
import { deepestTurn } from './deepest-turn.js';
import { leastGap, NO_ROCK } from './least-gap.js';
import practice from './practice.json' with { type: 'json' };
import { round1 } from './words.js';

/** How far below the flange a spanner's extension must pass, mm. */
const BELOW = 400;

/**
 * Room for every flange bolt: from the hole's centre to the pan's outside over the height of washer and head.
 * Wanted are the washer's radius, the weld bead and 1 mm.
 */
export const boltClearances = (design: Design, solids: readonly OuterSolid[]): readonly Clearance[] => {
  const shell = solids.filter((s) => s.role === 'shell');
  if (shell.length === 0) return [];
  const body = bodyOf(shell);
  const names = new Set(design.pan.wings.map((wing) => wing.name));
  const standing = shell.filter((s) => names.has(s.name));
  const wings = standing.length === 0 ? null : bodyOf(standing);
  const under = -design.pan.flange.thickness;
  return design.engine.railHoles.map(({ at: [x, y], thread }, i) => {
    const f = fastenerFor(thread);
    const segment = (length: number): readonly Vec3[] => [
      [x, y, under],
      [x, y, under - length],
    ];
    const near = leastGap(body, { points: segment(f.washerThickness + f.headHeight), radius: 0 }, NO_ROCK);
    const column = { points: segment(BELOW), radius: f.washer / 2 + practice.spannerRoom };
    const below = wings === null ? null : leastGap(wings, column, NO_ROCK);
    const meets = near.meets
      ? deepestTurn(body, { points: segment(f.washerThickness + f.headHeight), radius: 0 }, NO_ROCK)
      : null;
    const distance = meets === null ? near.distance : -meets.depth;
    const allowed = f.washer / 2 + BEAD_LEG + practice.spannerRoom;
    const part = near.meets
      ? shell[near.solid]!.name
      : faceNameAt(shell[near.solid]!, near.onBody, near.toward);
    const overhead =
      wings !== null && below?.meets && distance >= allowed ? wings.solids[below.solid]!.name : null;
    const reached =
      overhead === null
        ? ''
        : ` ${overhead} stands below it: only a spanner from the side or a thin-walled joint reaches this bolt.`;
    const row = fixedClearance({
      name: `bolt ${i + 1}`,
      kind: 'bolt',
      distance,
      allowed,
      between: [`bolt ${i + 1}`, part],
      at: meets?.at ?? near.onBody,
      because: `Hole ${i + 1} at x ${round1(x)}, y ${round1(y)} mm is ${round1(distance)} mm from the ${part}; washer, bead and 1 mm take ${round1(allowed)} mm.${reached}`,
    });
    return freeze({ ...row, overhead });
  });
};
