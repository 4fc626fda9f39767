import type { Chassis, Design } from '../design/index.js';
import {
  afterRotation,
  inverseRotation,
  NO_ROTATION,
  type Rotation,
  tiltedToLevel,
} from '../geometry/index.js';

/** From pan axes to the axes the chassis was measured in; both start at the same point. */
export type ChassisAxes =
  | { readonly known: true; readonly toChassis: Rotation }
  | { readonly known: false; readonly because: string };

/**
 * Level axes when the chassis says `car`, the pan's own when it says `pan`. Where it says neither, the two
 * are only the same for an engine that stands level.
 */
export const chassisAxes = (design: Design): ChassisAxes => {
  const { tilt } = design.engine;
  const axes: Chassis['axes'] = design.chassis.axes;
  if (axes === 'pan') return { known: true, toChassis: NO_ROTATION };
  if (tilt !== null && tilt.noseUp === 0 && tilt.leanLeft === 0)
    return { known: true, toChassis: NO_ROTATION };
  if (axes === 'car' && tilt !== null) {
    return { known: true, toChassis: tiltedToLevel(tilt.noseUp, tilt.leanLeft) };
  }
  return {
    known: false,
    because:
      axes === null
        ? 'The design does not say whether the chassis was measured level with the car or along the engine (chassis.axes), and the engine stands tilted.'
        : 'The chassis was measured level with the car and the engine’s tilt is not given (engine.tilt).',
  };
};

/**
 * The same with the engine's nose at another height: turned about the origin, the rear of the rail, the car where
 * it was measured. Radians.
 */
export const chassisAxesAt = (design: Design, noseUp: number): ChassisAxes => {
  const { tilt } = design.engine;
  const now = chassisAxes(design);
  if (!now.known || tilt === null) return now;
  const turn = afterRotation(
    inverseRotation(tiltedToLevel(tilt.noseUp, tilt.leanLeft)),
    tiltedToLevel(noseUp, tilt.leanLeft),
  );
  return { known: true, toChassis: afterRotation(now.toChassis, turn) };
};
