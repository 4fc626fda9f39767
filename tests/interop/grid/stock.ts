import type { Basins, Grid } from './basins.js';

/** Volume held below each height, hollow by hollow: a row of even steps per hollow, filled in between. */
export interface Stock {
  readonly low: number;
  readonly step: number;
  readonly bins: number;
  /** Row k holds the volume of hollow k below low + i·step, for i from 0 to bins. */
  readonly below: readonly Float64Array[];
}

export const stockOf = ({ cubes }: Grid, { count, hollow, height, spread }: Basins, step: number): Stock => {
  let low = Infinity;
  let high = -Infinity;
  for (let i = 0; i < cubes.count; i++) {
    low = Math.min(low, height[i]! - spread[i]!);
    high = Math.max(high, height[i]! + spread[i]!);
  }
  const bins = Math.ceil((high - low) / step) + 1;
  const below = Array.from({ length: count }, () => new Float64Array(bins + 1));
  for (let i = 0; i < cubes.count; i++) {
    const row = below[hollow[i] as number];
    if (row !== undefined) pour(row, (height[i]! - low) / step, spread[i]! / step, cubes.volume[i] as number);
  }
  for (const row of below) for (let i = 1; i <= bins; i++) row[i]! += row[i - 1] as number;
  return { low, step, bins, below };
};

/** Spreads a cube's volume evenly over the bins between middle − spread and middle + spread. */
const pour = (row: Float64Array, middle: number, spread: number, volume: number): void => {
  const from = middle - spread;
  const to = middle + spread;
  const each = volume / (to - from);
  for (let bin = Math.floor(from); bin < to; bin++) {
    row[bin + 1]! += each * Math.max(0, Math.min(to, bin + 1) - Math.max(from, bin));
  }
};

/** Adds rows: the stock of several hollows taken as one. */
export const rowOf = (stock: Stock, hollows: readonly number[]): Float64Array => {
  const row = new Float64Array(stock.bins + 1);
  for (const k of hollows) {
    const own = stock.below[k] as Float64Array;
    for (let i = 0; i < own.length; i++) row[i]! += own[i] as number;
  }
  return row;
};

export const volumeBelow = ({ low, step, bins }: Stock, row: Float64Array, height: number): number => {
  const at = Math.min(Math.max((height - low) / step, 0), bins);
  const i = Math.min(Math.floor(at), bins - 1);
  return row[i]! + (row[i + 1]! - row[i]!) * (at - i);
};

/** The height up to which a row holds a volume; its lowest point when there is none. */
export const heightFor = ({ low, step, bins }: Stock, row: Float64Array, volume: number): number => {
  let a = 0;
  let b = bins;
  while (b - a > 1) {
    const middle = (a + b) >> 1;
    if (row[middle]! <= volume) a = middle;
    else b = middle;
  }
  const more = row[a + 1]! - row[a]!;
  const part = more > 0 ? Math.min(Math.max((volume - row[a]!) / more, 0), 1) : 0;
  return low + step * (a + part);
};

/** The share of a cube that lies below a height. */
export const shareBelow = ({ height, spread }: Basins, cube: number, level: number): number =>
  Math.min(Math.max((level - height[cube]! + spread[cube]!) / (2 * spread[cube]!), 0), 1);
