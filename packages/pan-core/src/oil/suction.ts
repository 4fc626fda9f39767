import { freeze } from '../numeric/index.js';
import type { OilSystem } from './answer.js';
import { AT_REST, attitudeOf } from './attitude.js';
import { GRAVITY } from './critical.js';
import { densityOf, kinematicViscosity, type Oil } from './oil-properties.js';
import { type Tube, type TubeLoss, tubeLoss } from './tube-loss.js';

/** What the pump must draw against at one temperature and flow; N/mm², mm³/s. */
export interface Suction extends TubeLoss {
  readonly celsius: number;
  readonly rate: number;
  /** mm²/s */
  readonly viscosity: number;
  /** kg/m³ */
  readonly density: number;
  /** Raising the oil from its surface to the port. */
  readonly lift: number;
  /** Loss and lift together. */
  readonly pull: number;
}

/** Pull at the pump's port with oil at a temperature, drawn at a rate, raised by `rise` mm. */
export const suctionAt = (tube: Tube, oil: Oil, celsius: number, rate: number, rise: number): Suction => {
  const viscosity = kinematicViscosity(oil, celsius);
  const density = densityOf(oil, celsius);
  const loss = tubeLoss(tube, { rate, viscosity, density });
  // kg/m³ times mm/s² times mm is 1e-12 N/mm².
  const lift = density * GRAVITY * rise * 1e-12;
  return freeze({ ...loss, celsius, rate, viscosity, density, lift, pull: loss.total + lift });
};

/**
 * Height of the pump's port above the oil's surface at rest, along gravity in the installed tilt, mm; where no
 * port is given, the end of the tube's route.
 */
export const suctionRise = ({ model }: OilSystem, level: number): number | null => {
  const { pumpInlet } = model.design.engine;
  const port = pumpInlet ?? model.design.pickup.route.at(-1);
  if (port === undefined) return null;
  const { up } = attitudeOf(model.design, AT_REST);
  return up[0] * port[0] + up[1] * port[1] + up[2] * port[2] - level;
};

const COLDEST = -60;
const HOTTEST = 150;

/** Lowest temperature at which the pull stays within `most` N/mm² at this rate, °C; null when none up to 150 °C. */
export const warmEnough = (tube: Tube, oil: Oil, rate: number, rise: number, most: number): number | null => {
  const holds = (celsius: number): boolean => suctionAt(tube, oil, celsius, rate, rise).pull <= most;
  if (!holds(HOTTEST)) return null;
  let [no, yes] = [COLDEST, HOTTEST];
  if (holds(no)) return COLDEST;
  while (yes - no > 0.01) {
    const middle = (no + yes) / 2;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return yes;
};
