import { power } from '../../numeric/index.js';
import { practice } from './practice.js';

/** H over P up to which the Rehbock form is used; past it the coefficient stays (from memory: range up to 1). */
const MOST_HEAD_OVER_SILL = 1;

/**
 * Discharge coefficient of a sharp-crested weir across the full width, 0.611 + 0.08·H/P.
 * Rehbock, from memory; head H and sill height P above the floor upstream in one unit, H ≤ P.
 */
export const rehbock = (headOverSill: number): number =>
  0.611 + 0.08 * Math.min(MOST_HEAD_OVER_SILL, Math.max(0, headOverSill));

/** Discharge coefficient of an opening with a sharp edge, in thin oil: the value that a run in time takes for granted. */
export const SHARP_DISCHARGE = practice('orifice');

/**
 * Flow over a rectangular notch, ⅔·C_d·b·√(2g)·H^1.5, in mm³/s for mm and mm/s². Textbook form, free nappe.
 */
export const notchFlow = (discharge: number, width: number, head: number, gravity: number): number =>
  (2 / 3) * discharge * width * Math.sqrt(2 * gravity) * power(Math.max(0, head), 1.5);

/**
 * Share of the sharp-edged discharge coefficient that is left in slow or thick oil, 0–1.
 *
 * At small Reynolds numbers C_d = δ·√Re, Re from the mean speed C_d·v and the hydraulic diameter, with δ 0.2 for
 * a round hole and 0.157 for a slit (Wuest 1954 after Merritt 1967, from memory): C_d = δ²·v·D/ν. The two ends
 * are joined as Q ∝ Δp/(Δp² + Δp_t²)^¼, the form in common use for orifices that turn laminar, which makes the
 * share (1 + (λ_t/λ)⁴)^−¼ with λ = v·D/ν and λ_t = C_d/δ². The wall counts as thin: oil in a passage as long as
 * it is wide runs slower still.
 *
 * @param speed √(2·g·Δh), mm/s; @param diameter hydraulic, mm; @param viscosity kinematic, mm²/s
 */
export const laminarShare = (
  discharge: number,
  laminar: number,
  speed: number,
  diameter: number,
  viscosity: number,
): number => {
  const flow = (speed * diameter) / viscosity;
  if (!(flow > 0)) return 0;
  const turn = discharge / (laminar * laminar * flow);
  const square = turn * turn;
  return 1 / Math.sqrt(Math.sqrt(1 + square * square));
};

/** δ for a slit (weeps, edges, slots) or a hole that is about as high as wide. */
export const laminarFactor = (slit: boolean): number => practice(slit ? 'slitLaminar' : 'roundLaminar');
