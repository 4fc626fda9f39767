import type { FlangeSplit } from '../design/index.js';
import { type Path, pathBox, polylinePath, type Region, segmentMeetings } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';

/** How far a cutter reaches beyond the flange, mm. */
const BEYOND = 10;
/** How far a scarf runs on into the opening before it turns to the other side, mm. */
const INTO = 1;

/**
 * The line between both halves, from below or from the right to above or to the left of the flange. A scarf crosses
 * each strip at 45 degrees about its middle, both ends to the same side, so that it is its own mirror image.
 */
export const jointLine = (split: FlangeSplit, region: Region): Path =>
  polylinePath(jointPoints(split, region), false);

/** Closed paths that take everything below, and everything above, the joint's place. */
export const splitCutters = (split: FlangeSplit, region: Region): readonly [Path, Path] => {
  const points = jointPoints(split, region);
  const box = region.loops.map(pathBox);
  const k = split.way === 'across' ? 0 : 1;
  const low = Math.min(...box.map((b) => b.min[k])) - BEYOND;
  const high = Math.max(...box.map((b) => b.max[k])) + BEYOND;
  const close = (edge: number): Path => {
    const [a, b] = [points[points.length - 1]!, points[0]!];
    const ends: readonly Vec2[] =
      k === 0
        ? [
            [edge, a[1]],
            [edge, b[1]],
          ]
        : [
            [a[0], edge],
            [b[0], edge],
          ];
    return polylinePath([...points, ...ends], true);
  };
  return [close(low), close(high)];
};

const jointPoints = (split: FlangeSplit, region: Region): readonly Vec2[] => {
  const k = split.way === 'across' ? 0 : 1;
  const point = (along: number, across: number): Vec2 => (k === 0 ? [along, across] : [across, along]);
  const box = region.loops.map(pathBox);
  const least = Math.min(...box.map((b) => b.min[1 - k]!)) - BEYOND;
  const most = Math.max(...box.map((b) => b.max[1 - k]!)) + BEYOND;
  const line = polylinePath([point(split.at, least), point(split.at, most)], false)[0]!;
  const crossed = region.loops
    .flatMap((loop) => loop.flatMap((s) => segmentMeetings(line, s).map((m) => least + m.a * (most - least))))
    .sort((a, b) => a - b);
  const [a, b] = [crossed[0], crossed[1]];
  const [c, d] = [crossed[crossed.length - 2], crossed[crossed.length - 1]];
  if (split.joint === 'butt' || crossed.length < 4 || a === undefined || b === undefined) {
    return [point(split.at, least), point(split.at, most)];
  }
  // Over the strip from u to v the line moves as far along as the strip is wide.
  const at = (u: number, middle: number, sign: number): Vec2 => point(split.at + sign * (u - middle), u);
  const [lower, upper] = [(a + b) / 2, (c! + d!) / 2];
  return [at(least, lower, -1), at(b + INTO, lower, -1), at(c! - INTO, upper, 1), at(most, upper, 1)];
};
