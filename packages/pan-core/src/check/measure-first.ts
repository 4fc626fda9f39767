import type { Clearance } from '../clearance/index.js';

/** A measurement whose plus-or-minus can turn a clearance from good to bad or back. */
export interface DecidingMeasure {
  readonly name: string;
  /** What the clearance has over what is wanted, the measurement taken as it is, mm. */
  readonly spare_mm: number;
  readonly plus_minus_mm: number;
  /** False: nothing is near enough to turn; this one comes nearest. */
  readonly decides: boolean;
  readonly says: string;
}

/**
 * The measurements to repeat, first the one whose error, as a share of its plus-or-minus, turns its row soonest;
 * where none can turn a row, only the one that comes nearest. Rows without a plus-or-minus are not measured.
 */
export const decidingMeasures = (rows: readonly Clearance[]): readonly DecidingMeasure[] => {
  const measured = rows.flatMap((row) => {
    if (row.worst === null || row.plusMinus <= 0) return [];
    const spare = row.worst + row.plusMinus - row.allowed;
    return [{ row, spare, share: Math.abs(spare) / row.plusMinus }];
  });
  const order = [...measured].sort((a, b) => a.share - b.share);
  const deciding = order.filter(({ share }) => share <= 1);
  return (deciding.length > 0 ? deciding : order.slice(0, 1)).map(({ row, spare, share }) => ({
    name: row.name,
    spare_mm: spare,
    plus_minus_mm: row.plusMinus,
    decides: share <= 1,
    says: wordsFor(row, spare, share <= 1),
  }));
};

const wordsFor = ({ name, plusMinus }: Clearance, spare: number, decides: boolean): string => {
  const has =
    spare >= 0
      ? `has ${spare.toFixed(1)} mm to spare as measured`
      : `is ${(-spare).toFixed(1)} mm short as measured`;
  return decides
    ? `${name} ${has}, and the measurement is only good to ± ${plusMinus.toFixed(1)} mm: measure it again before anything is moved.`
    : `No measurement decides: the nearest is ${name}, which ${has} at ± ${plusMinus.toFixed(1)} mm.`;
};
