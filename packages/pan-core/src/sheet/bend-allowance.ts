/**
 * Length of flat sheet that a bend uses up, four ways. All lengths in one unit, angles in radians:
 * `angle` how far the sheet is turned (0–π), `radius` inside radius, `thickness` of the sheet.
 */

/** Neutral line at K·T from the inside face: BA = θ(R + K·T). Common sheet-metal textbook form. */
export const allowanceByK = (angle: number, radius: number, thickness: number, k: number): number =>
  angle * (radius + k * thickness);

/** Distance from the sharp outside corner to the bend's tangent line: tan(θ/2)(R + T). θ < π. */
export const outsideSetback = (angle: number, radius: number, thickness: number): number =>
  Math.tan(angle / 2) * (radius + thickness);

/** What to take off two outside lengths measured to the sharp corner: BD = 2·setback − BA. θ < π. */
export const bendDeduction = (angle: number, radius: number, thickness: number, allowance: number): number =>
  2 * outsideSetback(angle, radius, thickness) - allowance;

/**
 * Machinery's Handbook, 31st ed., p. 1421: length of a 90° bend c·T + 1.57·R, other angles pro rata.
 * c 0.55 soft brass and copper; 0.64 soft steel, aluminium, half-hard copper and brass; 0.71 bronze, hard
 * copper, cold-rolled and spring steel.
 */
export const allowanceByHandbook = (angle: number, radius: number, thickness: number, c: number): number =>
  (c * thickness + 1.57 * radius) * (angle / (Math.PI / 2));

/**
 * DIN 6935 correction factor k = 0.65 + 0.5·lg(r/s), 1 beyond r/s 5, never below 0 (form from memory).
 * The neutral line lies k·s/2 from the inside face.
 */
export const dinFactor = (radius: number, thickness: number): number => {
  const ratio = radius / thickness;
  if (ratio > 5) return 1;
  return ratio <= 0 ? 0 : Math.max(0, 0.65 + 0.5 * Math.log10(ratio));
};

/**
 * DIN 6935 compensation v in L = a + b − v (form from memory). β = π − angle is the opening angle.
 * β ≤ 90°: v = 2(r+s) − (π−β)(r + k·s/2), legs measured to the outermost tangent;
 * 90° < β ≤ 165°: first term 2(r+s)·tan((π−β)/2), legs to the sharp outside corner; beyond 165°: 0.
 */
export const dinCompensation = (
  angle: number,
  radius: number,
  thickness: number,
  k: number = dinFactor(radius, thickness),
): number => {
  if (angle < DIN_NO_BEND) return 0;
  const first =
    angle >= Math.PI / 2 ? 2 * (radius + thickness) : 2 * outsideSetback(angle, radius, thickness);
  return first - angle * (radius + (k * thickness) / 2);
};

/** Turned by less than 15° (opening angle past 165°) the standard takes nothing off. */
const DIN_NO_BEND = (15 * Math.PI) / 180;

/** The bend allowance that DIN 6935's compensation comes to, legs to the sharp outside corner. */
export const allowanceByDin = (angle: number, radius: number, thickness: number): number =>
  angle < DIN_NO_BEND
    ? 2 * outsideSetback(angle, radius, thickness)
    : allowanceByK(angle, radius, thickness, dinFactor(radius, thickness) / 2);

/**
 * K from a test strip bent once to 90°: its flat length before, and its two legs after, each measured over
 * the bend: from the strip's end to the outside of the other leg, as a caliper does.
 * BA = flat − legs + 2(R + T), then K = (BA/(π/2) − R)/T.
 */
export const kFromBendTest = (
  flat: number,
  legs: readonly [number, number],
  radius: number,
  thickness: number,
): number => {
  const allowance = flat - legs[0] - legs[1] + 2 * (radius + thickness);
  return (allowance / (Math.PI / 2) - radius) / thickness;
};

/**
 * Flat length of two inside lengths and the bend between them: L₁ + L₂ − 2·tan(θ/2)·ρ + BA, with ρ the
 * radius of the oil-side face: R where the oil is inside the bend, R + T where it is outside. θ < π.
 */
export const flatLength = (
  first: number,
  second: number,
  angle: number,
  oilSideRadius: number,
  allowance: number,
): number => first + second - 2 * Math.tan(angle / 2) * oilSideRadius + allowance;
