/** A point in pan axes, mm: x forward, y left, z up from the rail. */
export type Point = readonly [number, number, number];
export type Axis = 0 | 1 | 2;

/**
 * What a plate is at a point of its plane: no plate there, solid, the open room beside its edge, or an opening.
 * `forward` and `rearward` are one-way doors that let oil pass towards the greater or the smaller coordinate.
 * Oil that only runs past an edge or an opening does not go through: it must stand above its sill.
 */
export type Passage = 'none' | 'solid' | 'edge' | 'hole' | 'weep' | 'forward' | 'rearward';

/** A plate on a plane across one axis; its thickness lies towards the greater coordinate. */
export interface Screen {
  readonly axis: Axis;
  readonly at: number;
  readonly thickness: number;
  readonly passage: (point: Point) => Passage;
}

/** The room that oil can take, told as plainly as a grid needs it. */
export interface Space {
  readonly min: Point;
  readonly max: Point;
  /** True when nothing depends on y: the grid is then one cell wide. */
  readonly prismatic: boolean;
  /** Inside the pan or the crankcase, plates not counted. */
  readonly inside: (point: Point) => boolean;
  /** Share of the space at a point that oil can take. */
  readonly share: (point: Point) => number;
  readonly screens: readonly Screen[];
  readonly mouth: Point;
  /** Corners of the box whose oil counts as standing at the mouth: the mouth's pool is the one that reaches into it. */
  readonly mouthRoom: readonly [Point, Point];
}

/** True inside the metal of a plate. An opening is as thick as its plate and holds no oil, but for a weep. */
export const inMetal = (screens: readonly Screen[], point: Point): boolean =>
  screens.some(({ axis, at, thickness, passage }) => {
    const across = point[axis];
    if (across < at || across >= at + thickness) return false;
    const what = passage(point);
    return what !== 'none' && what !== 'edge' && what !== 'weep';
  });
