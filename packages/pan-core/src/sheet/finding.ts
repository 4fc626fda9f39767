import type { Design } from '../design/index.js';

/** One question about the sheet, answered: the shape of a check's row. */
export interface SheetFinding {
  readonly id: string;
  readonly title: string;
  readonly status: 'pass' | 'warn' | 'fail' | 'unknown';
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
  readonly because: string;
  readonly try: string;
}

/** A value that must be at least its limit; the design's own limit goes before the default. */
export interface AtLeast {
  readonly id: string;
  readonly title: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  /** What a value below the limit means. */
  readonly below: 'fail' | 'warn';
  readonly because: string;
  readonly try: (shortBy: number) => string;
}

export const atLeast = (design: Design, q: AtLeast): SheetFinding => {
  const limit = design.limits[q.id] ?? q.limit;
  const short = limit - q.value;
  // A sizing that lands on the limit must pass, whatever the last bit says.
  const held = short <= 1e-9 * Math.max(1, Math.abs(limit));
  return {
    id: q.id,
    title: q.title,
    status: held ? 'pass' : q.below,
    value: q.value,
    limit,
    unit: q.unit,
    because: q.because,
    try: held ? '' : q.try(short),
  };
};

/** A value that must be at most its limit. */
export const atMost = (design: Design, q: AtLeast): SheetFinding => {
  const limit = design.limits[q.id] ?? q.limit;
  const held = q.value - limit <= 1e-9 * Math.max(1, Math.abs(limit));
  return {
    id: q.id,
    title: q.title,
    status: held ? 'pass' : q.below,
    value: q.value,
    limit,
    unit: q.unit,
    because: q.because,
    try: held ? '' : q.try(q.value - limit),
  };
};
