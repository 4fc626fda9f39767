/**
 * Throat of an equal-leg fillet, mm: a = z/√2 (0.707 z in print), z the leg. Holds for a flat face.
 */
export const filletThroat = (leg: number): number => leg / Math.SQRT2;

/**
 * Leg of the fillet that joins two sheets, mm: about the thinner sheet's thickness.
 * Common practice, no source.
 */
export const filletLeg = (first: number, second: number): number => Math.min(first, second);

/**
 * Metal laid down in a fillet, kg: ½z²·ρ per length, flat face, no excess.
 *
 * @param leg mm
 * @param length mm
 * @param density kg/mm³
 */
export const filletMass = (leg: number, length: number, density: number): number =>
  0.5 * leg * leg * length * density;

/**
 * Heat put into a seam, kJ/mm: η·60·V·I/(1000·v).
 *
 * @param travel mm/min
 * @param efficiency 0.8 for MIG, 0.6 for TIG, seen in published tables
 */
export const heatInput = (volts: number, amps: number, travel: number, efficiency: number): number =>
  (efficiency * 60 * volts * amps) / (1000 * travel);
