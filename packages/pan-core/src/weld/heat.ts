import { findMaterial } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { heatInput } from './fillet.js';
import type { Seam } from './seam.js';
import table from './settings.json' with { type: 'json' };

/** A welding process. */
export type Process = 'TIG' | 'MIG';

/** Where a welder would begin, and what that puts into a seam. */
export interface SeamHeat {
  readonly process: Process;
  readonly amps: number;
  readonly volts: number;
  /** mm/min */
  readonly travel: number;
  /** kJ/mm */
  readonly perMm: number;
  /** In all that is laid, kJ. */
  readonly total: number;
}

/** Share of the arc's power that reaches the metal: published tables, seen. */
const EFFICIENCY: Readonly<Record<Process, number>> = { TIG: 0.6, MIG: 0.8 };

/** Length that is laid of a seam, mm: half of a stitched one. */
export const laidLength = ({ length, run }: Seam): number => (run === 'stitch' ? length / 2 : length);

/**
 * Heat of a seam for each process, from usual settings for a sheet. Range: sheet of 1 to 6 mm; empty for a
 * material that the materials table does not hold.
 *
 * @param thickness of the thinner sheet, mm
 */
export const seamHeat = (seam: Seam, material: string, thickness: number): readonly SeamHeat[] => {
  const metal = findMaterial(material)?.metal ?? null;
  return freeze(
    table.rows
      .filter((row) => row.metal === metal)
      .map((row): SeamHeat => {
        const process: Process = row.process === 'MIG' ? 'MIG' : 'TIG';
        const [amps, volts, travel] = [row.amps_per_mm * thickness, row.volts, row.travel_mm_per_min];
        const perMm = heatInput(volts, amps, travel, EFFICIENCY[process]);
        return { process, amps, volts, travel, perMm, total: perMm * laidLength(seam) };
      }),
  );
};
