import type { Design, Lid, LidEdge, Louvres, SlotRow } from '../design/index.js';
import { type Polygon, rectangle } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { halfWidthAt } from './half-width.js';

/** A slot with round ends: its box's middle, its length along u or v, and its width. */
export interface SlotCut {
  readonly shape: 'slot';
  readonly at: Vec2;
  readonly long: 'u' | 'v';
  readonly size: Vec2;
}

/** A tongue cut on three sides, hinged along u at one side and open at the other. */
export interface LouvreCut {
  readonly shape: 'louvre';
  readonly at: Vec2;
  readonly size: Vec2;
  /** Side of the free edge, along v. */
  readonly opens: 1 | -1;
  /** Width of the cut beside the tongue. */
  readonly slit: number;
  /** How far the tongue is bent down, radians. */
  readonly bend: number;
}

/** A way for oil through a lid that is no plain hole: as cut, and as oil meets it. */
export interface LidOpening {
  readonly cut: SlotCut | LouvreCut;
  readonly polygon: Polygon;
  readonly label: string;
}

/** The lid’s own plan: x of its ends, and y of its sides at an x; wings are left out. */
export interface LidPlan {
  readonly rear: number;
  readonly front: number;
  /** y of its left side at an x, mm. */
  readonly left: (x: number) => number;
  /** y of its right side at an x, mm. */
  readonly right: (x: number) => number;
}

/** Where a lid’s own edges lie: clipped to the pan’s ends and sides, mm. */
export const lidPlan = (design: Design, lid: Lid): LidPlan => {
  const { floor } = design.pan;
  const span = lid.span ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return {
    rear: Math.max(lid.rear, floor[floor.length - 1]?.[0] ?? lid.rear),
    front: Math.min(lid.front, floor[0]?.[0] ?? lid.front),
    left: (x) => Math.min(span[1], halfWidthAt(design.pan.left, x)),
    right: (x) => Math.max(span[0], -halfWidthAt(design.pan.right, x)),
  };
};

/** Every slot and louvre of a lid, row by row. */
export const lidOpenings = (design: Design, lid: Lid): readonly LidOpening[] => {
  const plan = lidPlan(design, lid);
  return [
    ...(lid.slots ?? []).flatMap((row, i) => slotRow(lid, plan, row, i)),
    ...(lid.louvres === undefined ? [] : louvreGrid(lid, plan, lid.louvres)),
  ];
};

/** Middles of `count` equal shares of a run. */
export const shares = (from: number, to: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => from + ((i + 0.5) / count) * (to - from));

/** The area that round ends take off a slot’s box is taken off its length, so that oil meets the same area. */
const slotPolygon = (at: Vec2, length: number, width: number, long: 'u' | 'v'): Polygon => {
  const [l, w] = [(length - (1 - Math.PI / 4) * width) / 2, width / 2];
  const [a, b] = long === 'u' ? [l, w] : [w, l];
  return rectangle(at[0] - a, at[0] + a, at[1] - b, at[1] + b);
};

const slotRow = (lid: Lid, plan: LidPlan, row: SlotRow, i: number): readonly LidOpening[] => {
  const [length, width] = row.size;
  const off = row.inset + width / 2;
  const along = ALONG[row.along](plan, off);
  return shares(along.from, along.to, row.count).map((s, k) => {
    const at = along.at(s);
    return {
      cut: { shape: 'slot', at, long: along.long, size: row.size },
      polygon: slotPolygon(at, length, width, along.long),
      label: `slot ${k + 1} of row ${i + 1} in ${lid.name}`,
    };
  });
};

interface Along {
  readonly from: number;
  readonly to: number;
  readonly long: 'u' | 'v';
  readonly at: (s: number) => Vec2;
}

const ALONG: Readonly<Record<LidEdge, (plan: LidPlan, off: number) => Along>> = {
  rear: (plan, off) => acrossAt(plan, plan.rear + off),
  front: (plan, off) => acrossAt(plan, plan.front - off),
  left: (plan, off) => ({ from: plan.rear, to: plan.front, long: 'u', at: (x) => [x, plan.left(x) - off] }),
  right: (plan, off) => ({ from: plan.rear, to: plan.front, long: 'u', at: (x) => [x, plan.right(x) + off] }),
};

const acrossAt = (plan: LidPlan, x: number): Along => ({
  from: plan.right(x),
  to: plan.left(x),
  long: 'v',
  at: (y) => [x, y],
});

/**
 * Louvres over the plate’s narrowest width. A tongue bent down by β leaves a throat as high as its free edge
 * hangs below the plate, (W − slit)·sin β, and the slit beside it; its two open ends are left out.
 */
const louvreGrid = (lid: Lid, plan: LidPlan, louvres: Louvres): readonly LidOpening[] => {
  const xs = shares(plan.rear, plan.front, louvres.count);
  const stations = [plan.rear, ...xs, plan.front];
  const ys = shares(
    Math.max(...stations.map(plan.right)),
    Math.min(...stations.map(plan.left)),
    louvres.rows,
  );
  const [length, width] = louvres.size;
  const slit = lid.thickness;
  const throat = Math.min(width, slit + Math.max(0, width - slit) * Math.sin(louvres.bend));
  const opens = louvres.opens === 'left' ? 1 : -1;
  return ys.flatMap((y, row) =>
    xs.map((x, k): LidOpening => {
      const edge = y + (opens * width) / 2;
      const [low, high] = [Math.min(edge, edge - opens * throat), Math.max(edge, edge - opens * throat)];
      return {
        cut: { shape: 'louvre', at: [x, y], size: louvres.size, opens, slit, bend: louvres.bend },
        polygon: rectangle(x - length / 2, x + length / 2, low, high),
        label: `louvre ${k + 1} of row ${row + 1} in ${lid.name}`,
      };
    }),
  );
};
