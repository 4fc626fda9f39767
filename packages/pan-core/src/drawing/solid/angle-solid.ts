import { arcSegment, type Path, polylinePath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Mesh } from './mesh.js';
import { extrudedSolid, type PlateFrame } from './plate-solid.js';

/** A strip folded once, square; both legs measured over the outside of the bend, mm. */
export interface Angle {
  readonly legs: readonly [number, number];
  readonly thickness: number;
  /** Inside radius of the bend. */
  readonly radius: number;
  readonly width: number;
}

/**
 * The strip as a closed solid without its holes: the first leg runs from `frame.origin` along u, its outer face at
 * v = 0, the second one down from its end; the width lies along `frame.normal`.
 */
export const angleSolid = (angle: Angle, frame: PlateFrame, what: string): Promise<Mesh> =>
  extrudedSolid([section(angle)], [], angle.width, what, frame);

const section = ({ legs: [first, second], thickness, radius }: Angle): Path => {
  const outer = radius + thickness;
  const centre: Vec2 = [first - outer, -outer];
  const run = (...points: readonly Vec2[]): Path => polylinePath(points, false);
  const quarter = Math.PI / 2;
  return [
    ...run([0, -thickness], [0, 0], [first - outer, 0]),
    arcSegment(centre, [first - outer, 0], [first, -outer], -quarter),
    ...run([first, -outer], [first, -second], [first - thickness, -second], [first - thickness, -outer]),
    arcSegment(centre, [first - thickness, -outer], [first - outer, -thickness], quarter),
    ...run([first - outer, -thickness], [0, -thickness]),
  ];
};
