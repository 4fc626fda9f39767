import type { CuttingPlane, PanModel, Point2, Point3 } from 'pan-core';

/** A drawing of the pan: what it cuts, and the window of the plane that it shows, mm. */
export interface ViewPlane extends CuttingPlane {
  readonly name: string;
  /** What lies at the left and the right edge. */
  readonly ends: readonly [string, string];
  readonly low: Point2;
  readonly high: Point2;
}

/** Paper kept free round the pan, mm. */
const ROOM = 24;

const corners = (model: PanModel): readonly Point3[] =>
  model.cells.flatMap((cell) => cell.faces.flatMap((face) => face.loop));

const window = (model: PanModel, plane: CuttingPlane): Pick<ViewPlane, 'low' | 'high'> => {
  const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const points = corners(model);
  const along = (axis: Point3): readonly [number, number] => {
    const all = points.map((p) => dot([p[0] - plane.at[0], p[1] - plane.at[1], p[2] - plane.at[2]], axis));
    return [Math.min(...all) - ROOM, Math.max(...all) + ROOM];
  };
  const [u, v] = [along(plane.right), along(plane.upward)];
  return { low: [u[0], v[0]], high: [u[1], v[1]] };
};

/** Seen from the right of the car, front to the right, cut through the mouth. */
export const sidePlane = (model: PanModel, y = model.mouth.centre[1]): ViewPlane => {
  const plane = { at: [0, y, 0], right: [1, 0, 0], upward: [0, 0, 1] } as const;
  return { ...plane, name: 'side', ends: ['rear', 'front'], ...window(model, plane) };
};

/** Seen from behind, the car's left on the left, cut through the mouth. */
export const crossPlane = (model: PanModel, x = model.mouth.centre[0]): ViewPlane => {
  const plane = { at: [x, 0, 0], right: [0, -1, 0], upward: [0, 0, 1] } as const;
  return { ...plane, name: 'cross', ends: ['left', 'right'], ...window(model, plane) };
};

/** Seen from above, front to the right, cut just over the mouth's rim. */
export const planPlane = (model: PanModel, z = model.mouth.centre[2] + 2): ViewPlane => {
  const plane = { at: [0, 0, z], right: [1, 0, 0], upward: [0, 1, 0] } as const;
  return { ...plane, name: 'plan', ends: ['rear', 'front'], ...window(model, plane) };
};
