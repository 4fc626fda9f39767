import { frictionFactor, fullyRough } from './friction.js';
import table from './tube-fittings.json' with { type: 'json' };

/** How the tube takes oil in: cut square in a plate, through a bell, or as a bare end standing in the oil. */
export type Entrance = 'square' | 'bell' | 'projecting';

/** One turn of the tube: its angle in radians, its centre-line radius over the bore. */
export interface TubeBend {
  readonly angle: number;
  readonly radiusOverBore: number;
}

/** A suction tube as far as its loss goes; mm. */
export interface Tube {
  readonly bore: number;
  readonly length: number;
  readonly entrance: Entrance;
  readonly bends: readonly TubeBend[];
}

/** Oil in motion: mm³/s, mm²/s, kg/m³. */
export interface Flow {
  readonly rate: number;
  readonly viscosity: number;
  readonly density: number;
}

/** Where the pressure goes, N/mm². */
export interface TubeLoss {
  /** mm/s */
  readonly speed: number;
  readonly reynolds: number;
  readonly friction: number;
  readonly entrance: number;
  readonly bends: number;
  readonly straight: number;
  /** ½ρV², which the oil takes along to the port. */
  readonly motion: number;
  readonly total: number;
}

/** Drawn tube, mm. */
export const TUBE_ROUGHNESS = table.roughness.value;

/** K over the fully rough friction factor of a 90° bend, straight between the rows of the table. */
export const bendRatio = (radiusOverBore: number): number => {
  const rows = table.bend.rows.map(([at = 0, k = 0]) => ({ at, k }));
  const [first, last] = [rows[0], rows[rows.length - 1]];
  if (first === undefined || last === undefined) return Number.NaN;
  if (radiusOverBore <= first.at) return first.k;
  for (let i = 1; i < rows.length; i++) {
    const [a, b] = [rows[i - 1] ?? first, rows[i] ?? last];
    if (radiusOverBore <= b.at) return a.k + ((b.k - a.k) * (radiusOverBore - a.at)) / (b.at - a.at);
  }
  return last.k;
};

/** The share of the velocity head lost where a tube begins, by the shape of its end. */
export const entranceLoss = (entrance: Entrance): number => table.entrance.turbulent[entrance];

/** ½ρV² in N/mm² from kg/m³ and mm/s. */
const dynamicPressure = (density: number, speed: number): number => (density * speed ** 2 * 1e-12) / 2;

/**
 * Pressure lost in a suction tube, N/mm²: Darcy–Weisbach for its length, K for entrance and bends. A fitting's
 * K is its turbulent one plus K₁/Re (two-K method, Hooper 1981), without which a bend would cost next to
 * nothing in cold oil. A bend of less or more than 90° counts by its share (no source).
 */
export const tubeLoss = (tube: Tube, { rate, viscosity, density }: Flow): TubeLoss => {
  const speed = rate / ((Math.PI * tube.bore ** 2) / 4);
  const reynolds = (speed * tube.bore) / viscosity;
  const roughness = TUBE_ROUGHNESS / tube.bore;
  const friction = frictionFactor(reynolds, roughness);
  const q = dynamicPressure(density, speed);
  const rough = fullyRough(roughness);
  const entrance = q * (entranceLoss(tube.entrance) + table.entrance.laminar / reynolds);
  const bends = tube.bends.reduce((sum, bend) => {
    const square = bendRatio(bend.radiusOverBore) * rough + table.bend.laminar / reynolds;
    return sum + (q * square * bend.angle) / (Math.PI / 2);
  }, 0);
  const straight = (q * friction * tube.length) / tube.bore;
  const total = entrance + bends + straight + q;
  return { speed, reynolds, friction, entrance, bends, straight, motion: q, total };
};
