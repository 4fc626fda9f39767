import type { Round } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';
import type { BodySolid } from './body.js';
import { prism } from './prism.js';

/** Sides of the prism that stands for a round thing: its corners stand outside by 0.02 mm on a diameter of 280. */
const SIDES = 180;

/** A round thing about the crank as a prism around it; nowhere does it lie inside the metal. */
export const roundSolid = (name: string, { diameter, rear, front }: Round, height: number): BodySolid => {
  const reach = diameter / 2 / Math.cos(Math.PI / SIDES);
  const base = Array.from({ length: SIDES }, (_, i): Vec3 => {
    const t = (2 * Math.PI * (i + 0.5)) / SIDES;
    return [rear, reach * Math.cos(t), height + reach * Math.sin(t)];
  });
  return prism(name, base, [front - rear, 0, 0]);
};
