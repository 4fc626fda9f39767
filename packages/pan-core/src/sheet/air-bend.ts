import table from './air-bend.json' with { type: 'json' };

/**
 * Shortest leg that rests on both shoulders of a V, mm: a press-brake table, straight lines between its rows and
 * in proportion before the first and past the last.
 *
 * @param opening of the V, mm
 */
export const shortestAirBendLeg = (opening: number): number => {
  const rows = table.shortest_leg;
  const [first, last] = [rows[0]!, rows[rows.length - 1]!];
  if (opening <= first.opening_mm) return (first.leg_mm / first.opening_mm) * opening;
  const next = rows.findIndex((row) => opening <= row.opening_mm);
  if (next < 0) return (last.leg_mm / last.opening_mm) * opening;
  const [a, b] = [rows[next - 1]!, rows[next]!];
  const share = (opening - a.opening_mm) / (b.opening_mm - a.opening_mm);
  return a.leg_mm + share * (b.leg_mm - a.leg_mm);
};

/** Inside radius that a bend in the air takes over a V, mm: 0.167 of its opening, press-brake table. */
export const airBendRadius = (opening: number): number => table.radius_in_openings * opening;

/** Opening of the V that leaves an inside radius, mm. */
export const openingFor = (radius: number): number => radius / table.radius_in_openings;

/** How far a die's radius may be off the one that lengths are reckoned with, mm: common practice, no source. */
export const radiusOff = (radius: number): number =>
  Math.max(table.radius_off.at_least_mm, table.radius_off.share * radius);

/**
 * Force of a bend in the air, N: F = (1 + 4s/w)·R_m·l·s²/w.
 *
 * @param strength tensile, N/mm²
 * @param thickness s, mm
 * @param opening w of the V, mm
 * @param length l of the fold, mm
 */
export const airBendForce = (strength: number, thickness: number, opening: number, length: number): number =>
  ((1 + (4 * thickness) / opening) * strength * length * thickness * thickness) / opening;
