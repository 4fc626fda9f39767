import type { Assumption, ReadDesign, Unknown } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { depthTable, dipstickAnswer, type OilSystem, type StickMark, TIP_GAP } from '../oil/index.js';
import { SAYINGS } from '../weld/index.js';

/** A place on the stick, along it from where its tube enters, and the oil it stands for. */
export interface StickRow {
  readonly along_mm: number;
  readonly in_pan_L: number;
  readonly in_pan_US_qt: number;
  /** Depth of the surface below the rail at the mouth's centre. */
  readonly surface_mm: number | null;
}

/** `pan dipstick`; the keys end in their units. */
export interface DipstickReport {
  readonly title: string;
  /** Where the tube enters, from which every distance along the stick counts. */
  readonly enters: readonly [number, number, number];
  readonly full: StickRow;
  readonly add: StickRow;
  /** Its end, short of the sheet. */
  readonly end_mm: number;
  readonly per_litre_mm: number;
  /** Reading at full on ground sloping by one degree; positive reads more oil than there is. */
  readonly slope_errors: readonly {
    readonly slope: string;
    readonly mark_mm: number | null;
    readonly reads_L: number | null;
  }[];
  readonly table: readonly StickRow[];
  /** Baffles without a hole where the stick passes. */
  readonly crossings: readonly {
    readonly baffle: string;
    readonly at: readonly [number, number, number];
    readonly along_mm: number;
  }[];
  readonly assumed: readonly Assumption[];
  /** What the marks would need and the file does not say; they are then for an engine that sits level. */
  readonly unknown: readonly Unknown[];
  readonly confirm: string;
}

/** US liquid quart: 57.75 in³ (NIST Handbook 44, appendix C), in mm³. */
const US_QUART = 57.75 * 25.4 * 25.4 * 25.4;

/**
 * Marks, errors and table of the design's dipstick.
 *
 * @throws PanError as `dipstickAnswer` does
 */
export const dipstickReport = (
  { design, assumed, unknown }: ReadDesign,
  system: OilSystem,
): DipstickReport => {
  const found = dipstickAnswer(system);
  const rowsOf = (marks: readonly StickMark[]): readonly StickRow[] => {
    const surfaces = depthTable(
      system,
      marks.map(({ volume }) => volume),
    );
    return marks.map(({ along, volume }, i) => ({
      along_mm: along,
      in_pan_L: volume / 1e6,
      in_pan_US_qt: volume / US_QUART,
      surface_mm: surfaces[i]?.surface ?? null,
    }));
  };
  const row = (mark: StickMark): StickRow => rowsOf([mark])[0] as StickRow;
  const apart = (found.full.volume - found.add.volume) / 1e6;
  const [x, y, z] = found.path.enters;
  return freeze({
    title: design.title,
    enters: [x, y, z],
    full: row(found.full),
    add: row(found.add),
    end_mm: found.tip,
    per_litre_mm: found.perLitre,
    slope_errors: found.slopes.map(({ slope, mark, volume }) => ({
      slope,
      mark_mm: mark,
      reads_L: volume === null ? null : volume / 1e6,
    })),
    table: rowsOf(found.table),
    crossings: found.crossings.map(({ baffle, at, along }) => ({ baffle, at, along_mm: along })),
    assumed: [
      ...assumed.filter(({ path }) => ['filter', 'galleries'].includes(String(path[1])) && path[0] === 'oil'),
      { path: ['add mark'], value: `${apart.toFixed(1)} L under full`, why: 'common practice, no source' },
      { path: ['end'], value: `${TIP_GAP} mm short of the sheet`, why: 'common practice, no source' },
    ],
    unknown: unknown.filter(({ path }) => path.includes('tilt')),
    confirm: SAYINGS.dipstick,
  });
};
