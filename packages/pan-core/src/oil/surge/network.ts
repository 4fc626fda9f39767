import { areaVector, type PlaneEquation } from '../../geometry/index.js';
import { dot3, length3, subtract3, type Vec3 } from '../../numeric/index.js';
import type { Opening, PanModel } from '../../pan/index.js';
import type { OilSystem } from '../answer.js';
import { laminarFactor } from './discharge.js';
import { type FlowShape, shapeOf } from './flow-shape.js';
import { createUnion } from './union.js';

/** An opening made ready for flow between two cells. */
export interface FlowOpening extends FlowShape {
  readonly from: number;
  readonly to: number;
  readonly plane: number;
  /** Open space over a lip or past an edge, over which oil falls as over a weir; never a slot. */
  readonly open: boolean;
  /** δ of `laminarShare`. */
  readonly laminar: number;
  /** Place in the list of doors, −1 for none. */
  readonly door: number;
  /** Place in the list of passages whose litres are counted, −1 for none. */
  readonly passage: number;
}

/** The pan as flow sees it: bays of cells, and what lets oil through between them. */
export interface SurgeNet {
  readonly system: OilSystem;
  readonly openings: readonly FlowOpening[];
  /** Cells that always belong to each bay; thin cells between are handed to bays by direction. */
  readonly bays: readonly (readonly number[])[];
  readonly doors: readonly number[];
  readonly passages: readonly { readonly label: string; readonly kind: Opening['kind'] }[];
}

/** A cell that holds less than this share of the pan has no oil of its own: it goes with a neighbour. */
const LEAST_BAY = 0.005;
/** Two cells are one bay where this share of the smaller face is open and nothing juts in by more, mm. */
const WIDE_OPEN = 0.8;
const JUTS = 1;
/** A face is a ceiling when its outward normal rises more than this. */
const CEILING = 0.5;
/** An opening beside a baffle that is a smaller share than this of the gap it closes is a slot. */
const SLOT = 0.1;
/** Area over diameter squared past which an opening is a slit: eight times as long as high. */
const SLIT = 2;

export const createNet = (system: OilSystem): SurgeNet => {
  const { model, body } = system;
  const labels = new Map<string, number>();
  const passages: { label: string; kind: Opening['kind'] }[] = [];
  const doors: number[] = [];
  const openings = model.openings.map((opening, i): FlowOpening => {
    if (opening.label !== '' && !labels.has(opening.label)) {
      labels.set(opening.label, passages.length);
      passages.push({ label: opening.label, kind: opening.kind });
    }
    if (opening.oneWay) doors.push(i);
    return flowOpening(model, opening, body.origin, opening.oneWay ? doors.length - 1 : -1, labels);
  });
  return { system, openings, bays: baysOf(system, openings), doors, passages };
};

const flowOpening = (
  model: PanModel,
  opening: Opening,
  origin: Vec3,
  door: number,
  labels: ReadonlyMap<string, number>,
): FlowOpening => {
  const free = opening.kind === 'free';
  const shape = shapeOf(opening.pieces.map((piece) => piece.map((p) => subtract3(p, origin))));
  return {
    ...shape,
    from: opening.from,
    to: opening.to,
    plane: opening.plane,
    open: free && !isSlot(model, opening),
    laminar: laminarFactor(free || shape.area > SLIT * shape.diameter ** 2),
    door,
    passage: labels.get(opening.label) ?? -1,
  };
};

const isSlot = (model: PanModel, opening: Opening): boolean => {
  if (opening.baffle === null) return false;
  const metal = model.blocked
    .filter((b) => b.baffle === opening.baffle && (b.cell === opening.from || b.cell === opening.to))
    .reduce((sum, b) => sum + b.area, 0);
  return opening.area < SLOT * (opening.area + metal);
};

/** Large cells, those with nothing between them together, and the largest cell of any group that has none. */
const baysOf = (
  { body, model }: OilSystem,
  openings: readonly FlowOpening[],
): readonly (readonly number[])[] => {
  const capacity = (c: number): number => body.capacity[c] as number;
  const whole = body.capacity.reduce((a, b) => a + b, 0);
  const reach = createUnion(model.cells.length);
  for (const { from, to, open } of openings) if (open) reach.join(from, to);
  const largest = new Map<number, number>();
  model.cells.forEach((_, c) => {
    const best = largest.get(reach.root(c));
    if (best === undefined || capacity(c) > capacity(best)) largest.set(reach.root(c), c);
  });
  const seeds = model.cells
    .map((_, c) => c)
    .filter((c) => capacity(c) >= LEAST_BAY * whole || largest.get(reach.root(c)) === c);
  const bays = createUnion(model.cells.length);
  openings.forEach(({ from, to, open }, w) => {
    if (open && seeds.includes(from) && seeds.includes(to) && nothingBetween(model, w)) bays.join(from, to);
  });
  const byRoot = new Map<number, number[]>();
  for (const c of seeds) byRoot.set(bays.root(c), [...(byRoot.get(bays.root(c)) ?? []), c]);
  return [...byRoot.values()];
};

/** Whether two cells hold oil as one room would: most of the smaller face is open, and no floor or wall juts in. */
const nothingBetween = (model: PanModel, w: number): boolean => {
  const { plane, from, to, area } = model.openings[w] as Opening;
  const least = Math.min(faceArea(model, from, plane), faceArea(model, to, plane));
  return area > WIDE_OPEN * least && flush(model, plane, from, to) && flush(model, plane, to, from);
};

/** Whether one cell, continued past the plane they share, holds the other; ceilings do not matter to oil. */
const flush = (model: PanModel, plane: number, mine: number, other: number): boolean => {
  const corners = model.cells[other]?.faces.flatMap((f) => f.loop) ?? [];
  return (model.cells[mine]?.faces ?? []).every((face) => {
    const { normal, offset } = model.table.planes[face.plane] as PlaneEquation;
    if (face.plane === plane || face.side * normal[2] > CEILING) return true;
    return corners.every((p) => face.side * (dot3(normal, p) - offset) < JUTS);
  });
};

const faceArea = (model: PanModel, cell: number, plane: number): number =>
  (model.cells[cell]?.faces ?? [])
    .filter((f) => f.plane === plane)
    .reduce((sum, f) => sum + length3(areaVector(f.loop)), 0);
