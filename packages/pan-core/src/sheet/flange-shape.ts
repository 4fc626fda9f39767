import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { clockwise, type Path, pathArea, polygonOffset, selfCrossings } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { halfWidthAt, type Profile } from '../pan/index.js';

/** Gap all round between the pan's outside and the flange's opening, mm: common practice, no source. */
export const FLANGE_GAP = 0.2;

/** The pan's inside at the rail plane seen from above, counter-clockwise. */
export const insideAtRail = (design: Design, profile: Profile): readonly Vec2[] => {
  const front = profile.sharp[0]![0];
  const rear = profile.sharp[profile.sharp.length - 1]![0];
  const run = (rows: Design['pan']['left']): readonly number[] => [
    rear,
    ...rows.map((r) => r[0]).filter((x) => x > rear && x < front),
    front,
  ];
  const right = run(design.pan.right).map((x): Vec2 => [x, -halfWidthAt(design.pan.right, x)]);
  const left = run(design.pan.left).map((x): Vec2 => [x, halfWidthAt(design.pan.left, x)]);
  return [...right, ...[...left].reverse()];
};

/** The flange's outer edge seen from above: the rail, or so far beyond it as the design says. */
export const flangeOutline = (design: Design): Path => {
  const outline = polygonOffset(design.engine.rail.outline, design.pan.flange.beyond);
  if (pathArea(outline) <= 0 || selfCrossings(outline).length > 0) {
    throw new PanError({
      code: 'sheet-cut',
      path: ['pan', 'flange', 'beyond'],
      message: `A flange ${design.pan.flange.beyond} mm beyond the rail crosses its own outline.`,
      advice: 'Let it stand out less, or leave the inlet out of the rail’s outline.',
    });
  }
  return outline;
};

/** The flange's opening: the pan's outside at the rail and a gap, corners round about the pan's own corners. */
export const flangeOpening = (design: Design, profile: Profile): Path =>
  clockwise(polygonOffset(insideAtRail(design, profile), design.pan.sheet.thickness + FLANGE_GAP));
