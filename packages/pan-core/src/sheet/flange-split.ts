import type { Design, FlangeSplit } from '../design/index.js';
import { type Path, pathBox, polylinePath, type Region, segmentMeetings } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';

/** How far a cutter reaches beyond the flange, mm. */
const BEYOND = 10;
/** How far a scarf runs on into the opening before it turns to the other side, mm. */
const INTO = 1;

/** Both halves' names, the one at the joint's lower side first. */
export const halfNames = ({ way }: FlangeSplit): readonly [string, string] =>
  way === 'across' ? ['flange rear', 'flange front'] : ['flange right', 'flange left'];

/**
 * The line between both halves, from below or from the right to above or to the left of the flange. A scarf crosses
 * each strip at 45 degrees about its middle, both outer ends to the same side, so that it is its own mirror image.
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

/** x of a joint across the flange that has most room between bolts near its middle; the middle where none are known. */
export const usualSplit = ({ engine: { rail, railHoles } }: Design): number => {
  const xs = rail.outline.map((p) => p[0]);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const holes = [...new Set(railHoles.map(({ at }) => at[0]))].sort((a, b) => a - b);
  const gaps = holes.slice(1).map((x, i) => ({ at: (x + holes[i]!) / 2, width: x - holes[i]! }));
  const widest = Math.max(...gaps.map((gap) => gap.width));
  const near = gaps
    .filter((gap) => gap.width > widest / 2)
    .map((gap) => gap.at)
    .sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
  return near[0] ?? middle;
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
  const straight = [point(split.at, least), point(split.at, most)];
  const [a, b] = crossed;
  const [c, d] = crossed.slice(-2);
  if (split.joint === 'butt' || a === undefined || b === undefined || c === undefined || d === undefined) {
    return straight;
  }
  // A joint to the right of the crank's line leans the other way, so that a mirrored flange has it mirrored.
  const lean = split.way === 'lengthwise' && split.at < 0 ? -1 : 1;
  // Over the strip from u to v the line moves as far along as the strip is wide.
  const at = (u: number, middle: number, sign: number): Vec2 =>
    point(split.at + lean * sign * (u - middle), u);
  const low = [at(least, (a + b) / 2, -1), at(b + INTO, (a + b) / 2, -1)];
  const high = [at(c - INTO, (c + d) / 2, 1), at(most, (c + d) / 2, 1)];
  if (crossed.length > 2) return [...low, ...high];
  // Where an end plate stands at the other end, only one strip is crossed.
  return a - least < most - b ? [...low, point(low[1]![k], most)] : [point(high[0]![k], least), ...high];
};
