import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { allowanceByDin, allowanceByHandbook, allowanceByK, kFromBendTest } from './bend-allowance.js';
import data from './bend-data.json' with { type: 'json' };

/** How hard a sheet is, as far as bending minds. */
export type Hardness = 'soft' | 'medium' | 'hard';

/** How this design's bends are reckoned. */
export interface BendRule {
  /** Flat length used by a bend turned through `angle` (radians), mm. */
  readonly allowance: (angle: number) => number;
  /** For the note on a drawing. */
  readonly words: string;
  /** The material has no row of its own in the tables, and a medium one was taken. */
  readonly guessed: boolean;
}

interface MaterialBends {
  readonly air_bend: string;
  readonly handbook: string;
}

const rows: Readonly<Record<string, MaterialBends>> = data.materials.rows;

/** The bending rows of a material by its key; null when the tables do not have it. */
export const bendRows = (material: string): MaterialBends | null => rows[material] ?? null;

/** Air-bend K from the table, by hardness and inside radius over thickness. */
export const tableK = (radius: number, thickness: number, hardness: Hardness): number => {
  const ratio = radius / thickness;
  const row = data.air_bend_k.rows.find(
    (r) => r.radius_over_thickness_to === null || ratio <= r.radius_over_thickness_to,
  );
  return row?.[hardness] ?? 0.5;
};

/** The handbook's factor of the thickness in c·T + 1.57·R, by hardness. */
export const handbookConstant = (hardness: Hardness): number => data.handbook_c[hardness];

/**
 * The rule for a design's sheet: its own test bend if there is one, else the way named in `pan.joints`.
 *
 * @throws PanError `input-range` when the test bend cannot have come from this sheet (K outside 0–1).
 */
export const bendRule = (design: Design): BendRule => {
  const { material, thickness, bendRadius } = design.pan.sheet;
  const { bendTest, allowance } = design.pan.joints;
  const row = bendRows(material);
  const guessed = row === null;
  if (bendTest !== null) {
    const k = kFromBendTest(bendTest.flat, bendTest.legs, bendRadius, thickness);
    if (!(k > 0 && k < 1)) throw badTest(k, bendTest.flat, bendTest.legs, bendRadius, thickness);
    return {
      allowance: (angle) => allowanceByK(angle, bendRadius, thickness, k),
      words: `K ${k.toFixed(3)} from your own test bend`,
      guessed: false,
    };
  }
  if (allowance === 'din') {
    return {
      allowance: (angle) => allowanceByDin(angle, bendRadius, thickness),
      words: 'DIN 6935',
      guessed: false,
    };
  }
  if (allowance === 'handbook') {
    const c = handbookConstant((row?.handbook ?? 'medium') as Hardness);
    return {
      allowance: (angle) => allowanceByHandbook(angle, bendRadius, thickness, c),
      words: `handbook length ${c} T + 1.57 R for 90 deg`,
      guessed,
    };
  }
  const k = tableK(bendRadius, thickness, (row?.air_bend ?? 'medium') as Hardness);
  return {
    allowance: (angle) => allowanceByK(angle, bendRadius, thickness, k),
    words: `K ${k} (air-bend table)`,
    guessed,
  };
};

const badTest = (
  k: number,
  flat: number,
  legs: readonly [number, number],
  radius: number,
  thickness: number,
): PanError => {
  // K 0 to 1 puts the neutral line inside the sheet; the sum of legs it allows follows from the same formula.
  const least = flat + 2 * (radius + thickness) - (Math.PI / 2) * (radius + thickness);
  const most = flat + 2 * (radius + thickness) - (Math.PI / 2) * radius;
  return new PanError({
    code: 'input-range',
    path: ['pan', 'joints', 'bend_test'],
    message: `The test bend puts the neutral line at ${k.toFixed(2)} of the thickness, outside the sheet.`,
    expected: `two legs that add up to between ${least.toFixed(1)} and ${most.toFixed(1)} mm`,
    found: `${(legs[0] + legs[1]).toFixed(1)} mm`,
    value: k,
    limit: k <= 0 ? 0 : 1,
    unit: '1',
    advice:
      'Bend a strip to 90 deg at the stated inside radius and measure each leg over the outside of the other.',
  });
};
