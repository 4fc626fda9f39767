import { type CuttingPlane, flatOn, type PanModel, type Point2 } from 'pan-core';

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

/** What of the plane shows the whole pan. */
const windowOn = (model: PanModel, plane: CuttingPlane): Pick<ViewPlane, 'low' | 'high'> => {
  const flat = model.cells.flatMap(({ faces }) =>
    faces.flatMap(({ loop }) => loop.map((p) => flatOn(plane, p))),
  );
  const [us, vs] = [flat.map((p) => p[0]), flat.map((p) => p[1])];
  return {
    low: [Math.min(...us) - ROOM, Math.min(...vs) - ROOM],
    high: [Math.max(...us) + ROOM, Math.max(...vs) + ROOM],
  };
};

/** Seen from the right of the car, front to the right, cut through the mouth. */
export const sidePlane = (model: PanModel, y = model.mouth.centre[1]): ViewPlane => {
  const plane = { at: [0, y, 0], right: [1, 0, 0], upward: [0, 0, 1] } as const;
  return { ...plane, name: 'side', ends: ['rear', 'front'], ...windowOn(model, plane) };
};

/** Seen from behind, the car's left on the left, cut through the mouth. */
export const crossPlane = (model: PanModel, x = model.mouth.centre[0]): ViewPlane => {
  const plane = { at: [x, 0, 0], right: [0, -1, 0], upward: [0, 0, 1] } as const;
  return { ...plane, name: 'cross', ends: ['left', 'right'], ...windowOn(model, plane) };
};

/** Seen from above, front to the right, cut just over the mouth's rim. */
export const planPlane = (model: PanModel, z = model.mouth.centre[2] + 2): ViewPlane => {
  const plane = { at: [0, 0, z], right: [1, 0, 0], upward: [0, 1, 0] } as const;
  return { ...plane, name: 'plan', ends: ['rear', 'front'], ...windowOn(model, plane) };
};
