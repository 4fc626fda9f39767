import type { Design } from '../design/index.js';
import { polylinePath, rectangle } from '../geometry/index.js';
import { allowanceByK, flatLength } from './bend-allowance.js';
import { bendRows, type Hardness, tableK } from './bend-rule.js';
import { type Draft, finishPart } from './finish.js';
import type { Part } from './part.js';

/** A strip folded once across. */
export interface AngleStrip {
  readonly width: number;
  /** Lengths of both legs, inside or outside as `measured` says, mm. */
  readonly legs: readonly [number, number];
  readonly measured: 'inside' | 'outside';
  /** How far it is turned, radians. */
  readonly angle: number;
}

/** A strip of the pan’s own material folded once: its flat length, its fold, and the K that it was laid out by. */
export const angleStrip = (
  design: Design,
  thickness: number,
  name: string,
  { width, legs, measured, angle }: AngleStrip,
) => {
  const { material, bendRadius } = design.pan.sheet;
  const hardness = (bendRows(material)?.air_bend ?? 'medium') as Hardness;
  const k = tableK(bendRadius, thickness, hardness);
  const allowance = allowanceByK(angle, bendRadius, thickness, k);
  const rho = measured === 'inside' ? bendRadius : bendRadius + thickness;
  const length = flatLength(legs[0], legs[1], angle, rho, allowance);
  const at = legs[0] - Math.tan(angle / 2) * rho + allowance / 2;
  return {
    k,
    length,
    outline: polylinePath(rectangle(0, length, 0, width), true),
    fold: {
      name,
      from: [at, 0],
      to: [at, width],
      angle,
      radius: bendRadius,
      direction: 'up',
      allowance,
    } as const,
  };
};

/** The part that such a strip is, with what is its own. */
export const stripPart = (
  design: Design,
  thickness: number,
  strip: ReturnType<typeof angleStrip>,
  own: Pick<Draft, 'name' | 'what' | 'quantity' | 'holes' | 'notes'>,
): Part =>
  finishPart({
    material: design.pan.sheet.material,
    thickness,
    drawnFace: 'either',
    outline: strip.outline,
    openings: [],
    folds: [strip.fold],
    marks: [],
    ...own,
  });
