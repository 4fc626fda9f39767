import type { Opening, PanModel } from '../pan/index.js';
import type { Body, Oriented } from './body.js';

export type Gating = 'rest' | 'held' | 'settled';

/** A way between two cells under one gating: `both` passes oil either way, else only from → to. */
export interface Way {
  readonly opening: number;
  readonly from: number;
  readonly to: number;
  readonly both: boolean;
}

/** Which openings pass oil, and the corners that decide their sills. */
export interface Ways {
  readonly list: readonly Way[];
  /** Numbers of the ways at each cell. */
  readonly at: readonly (readonly number[])[];
  readonly corners: readonly Float64Array[];
  /** Whether any passes oil one way only. */
  readonly doors: boolean;
}

/** Rest: every door and weep open both ways. Held: free openings and holes only. Settled: weeps both ways, doors one way. */
const passes = (opening: Opening, gating: Gating): boolean =>
  gating !== 'held' || opening.kind === 'free' || opening.kind === 'hole';

export const waysOf = (model: Pick<PanModel, 'openings' | 'cells'>, body: Body, gating: Gating): Ways => {
  const list: Way[] = [];
  const corners: Float64Array[] = [];
  const at: number[][] = model.cells.map(() => []);
  model.openings.forEach((opening, i) => {
    if (!passes(opening, gating)) return;
    const { from, to } = opening;
    at[from]?.push(list.length);
    at[to]?.push(list.length);
    list.push({ opening: i, from, to, both: gating === 'rest' || !opening.oneWay });
    corners.push(
      Float64Array.from(
        opening.pieces.flatMap((piece) =>
          piece.flatMap((p) => [p[0] - body.origin[0], p[1] - body.origin[1], p[2] - body.origin[2]]),
        ),
      ),
    );
  });
  return { list, at, corners, doors: list.some(({ both }) => !both) };
};

/** Lowest point of each way along effective gravity, mm above the body's origin, into `out`. */
export const sillsOf = (ways: Ways, o: Oriented, out: Float64Array): Float64Array => {
  const [x, y, z] = o.up;
  for (let i = 0; i < ways.list.length; i++) {
    const c = ways.corners[i] as Float64Array;
    let sill = Number.POSITIVE_INFINITY;
    for (let k = 0; k < c.length; k += 3) {
      const h = (c[k] as number) * x + (c[k + 1] as number) * y + (c[k + 2] as number) * z;
      if (h < sill) sill = h;
    }
    out[i] = sill;
  }
  return out;
};
