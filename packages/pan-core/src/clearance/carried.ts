import type { Design, Item, Rod } from '../design/index.js';
import { cross3, dot3, scale3, subtract3, unit3, type Vec3 } from '../numeric/index.js';
import { convexParts } from '../pan/index.js';
import type { BodySolid } from './body.js';
import { hullOfShape } from './obstacle-hull.js';
import { prism } from './prism.js';
import { roundSolid } from './round.js';

/** Sides of the prism that stands for a carried rod. */
const ROD_SIDES = 24;

/** The block, as high as the engine is, and what rides on it. */
export const carriedSolids = (design: Design): readonly BodySolid[] => {
  const { rail, topAboveRail, carries } = design.engine;
  const block =
    topAboveRail === null
      ? []
      : convexParts(rail.outline).map((part) =>
          prism(
            'engine block',
            part.map(([x, y]): Vec3 => [x, y, 0]),
            [0, 0, topAboveRail],
          ),
        );
  const { crank, flywheel, bellHousing } = design.engine;
  const rounds =
    crank === null
      ? []
      : [
          ...(flywheel === null ? [] : [roundSolid('flywheel', flywheel, crank.centreAboveRail)]),
          ...(bellHousing === null ? [] : [roundSolid('bell housing', bellHousing, crank.centreAboveRail)]),
        ];
  return [...block, ...carries.map(itemSolid), ...rounds];
};

/** An item as a solid: a box as it is, a rod as a prism around its rounded ends. */
export const itemSolid = ({ name, shape }: Item): BodySolid => {
  if (shape.kind === 'rod') return rodSolid(name, shape);
  const { min, max } = shape;
  const base: readonly Vec3[] = [
    [min[0], min[1], min[2]],
    [max[0], min[1], min[2]],
    [max[0], max[1], min[2]],
    [min[0], max[1], min[2]],
  ];
  return prism(name, base, [0, 0, max[2] - min[2]]);
};

/** Holds the rod with its round ends; its corners stand outside by less than a hundredth of the radius. */
const rodSolid = (name: string, rod: Rod): BodySolid => {
  const radius = rod.diameter / 2;
  const { points } = hullOfShape({ ...rod, travel: [0, 0, 0] });
  const [from, to] = [points[0]!, points[1]!];
  const along = unit3(subtract3(to, from));
  const helper: Vec3 = Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const u = unit3(cross3(helper, along));
  const v = cross3(along, u);
  const reach = radius / Math.cos(Math.PI / ROD_SIDES);
  const base = Array.from({ length: ROD_SIDES }, (_, i): Vec3 => {
    const t = (2 * Math.PI * i) / ROD_SIDES;
    const [c, s] = [reach * Math.cos(t), reach * Math.sin(t)];
    const at = (k: 0 | 1 | 2): number => from[k] - radius * along[k] + c * u[k] + s * v[k];
    return [at(0), at(1), at(2)];
  });
  return prism(name, base, scale3(along, dot3(subtract3(to, from), along) + 2 * radius));
};
