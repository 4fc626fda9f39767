import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { floorProfile, type OuterSolid, type Plate } from '../pan/index.js';
import { besideEngineClearances } from './beside-engine.js';
import { bodyOf, type MeetMeasure } from './body.js';
import { boltClearances } from './bolts.js';
import { carriedSolids } from './carried.js';
import { chassisClearances, formedObstacles } from './chassis.js';
import { type Clearance, lessMeasured } from './clearance.js';
import { crankClearances } from './crank.js';
import { groundClearances } from './ground.js';
import { insideClearances } from './inside-items.js';

/**
 * Every clearance of a design: pan to chassis and road, block and what it carries to chassis and to the pan, rods and inside
 * items to pan, baffles and tube, and room for the flange bolts. Lengths in mm, places in pan axes.
 *
 * @param solids The pan's outside (`outerSolids`).
 * @param plates The baffles fitted to the pan.
 * @param measure What is told of obstacles that meet the pan or what the engine carries; scans always tell depth.
 * @param tell Share of the work done, 0–1; large scans take seconds.
 */
export const clearances = (
  design: Design,
  solids: readonly OuterSolid[],
  plates: readonly Plate[],
  measure: MeetMeasure = 'depth',
  tell: (share: number) => void = () => {},
): readonly Clearance[] => {
  const pan = bodyOf(solids, measure);
  const carried = carriedSolids(design);
  const obstacles = formedObstacles(design);
  const profile = floorProfile(design);
  return freeze([
    ...chassisClearances(design, obstacles, pan, 'chassis', 'pan', (share) => tell(share / 2)),
    ...groundClearances(design, pan),
    ...(carried.length === 0
      ? []
      : chassisClearances(design, obstacles, bodyOf(carried, measure), 'carried', 'engine', (share) =>
          tell((1 + share) / 2),
        )),
    ...[
      ...besideEngineClearances(design, pan),
      ...crankClearances(design, profile, plates),
      ...insideClearances(design, profile, plates),
      ...boltClearances(design, solids),
    ].map((row) => lessMeasured(row, design.engine.plusMinus)),
  ]);
};
