import { boundsGap, boundsOf, halfSpacesOf, hullGap, type RoundHull } from '../geometry/index.js';
import { dot3 } from '../numeric/index.js';
import { type Body, isOuterFace } from './body.js';
import { sweptHull } from './deepest-turn.js';
import type { Rock } from './least-gap.js';

/**
 * How far a hull that meets a body would have to be shifted, square to one of the body's outer faces, to part
 * from the solid it is worst in, over every turn of the rock at once. Not how deep it lies: a measure that costs
 * little, goes evenly to 0 as the two part and is the greater the more they meet, for a search to follow.
 */
export const partingShift = (body: Body, hull: RoundHull, { height, angle }: Rock): number => {
  const swept = angle === 0 ? hull : sweptHull(hull, height, 0, angle);
  const box = boundsOf(swept.points);
  return body.solids.reduce((worst, solid, i) => {
    if (boundsGap(box, body.bounds[i]!) > swept.radius) return worst;
    if (hullGap(solid.vertices, swept.points).distance > swept.radius) return worst;
    const shifts = halfSpacesOf(solid).flatMap(({ normal, offset }, k) =>
      isOuterFace(solid.faceNames[k]!)
        ? [offset + swept.radius - swept.points.reduce((a, p) => Math.min(a, dot3(normal, p)), Infinity)]
        : [],
    );
    return shifts.length === 0 ? worst : Math.max(worst, Math.min(...shifts));
  }, 0);
};
