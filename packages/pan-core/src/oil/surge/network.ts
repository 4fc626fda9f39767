import { areaVector, type PlaneEquation } from '../../geometry/index.js';
import { dot3, length3, subtract3, type Vec3 } from '../../numeric/index.js';
import type { Opening, PanModel } from '../../pan/index.js';
import type { OilSystem } from '../answer.js';
import { laminarFactor } from './discharge.js';
import type { OpeningShape } from './opening-head.js';
import { createUnion } from './union.js';

/** An opening made ready for flow; points are relative to the body's origin, mm. */
export interface FlowOpening extends OpeningShape {
  readonly from: number;
  readonly to: number;
  /** Open space over a lip or past an edge, over which oil falls as over a weir; never a slot. */
  readonly open: boolean;
  readonly corners: Float64Array;
  readonly centre: Vec3;
  /** Heights of the corners; work space. */
  readonly heights: Float64Array;
  readonly area: number;
  /** Hydraulic diameter of the whole opening, 4·area/perimeter, mm. */
  readonly diameter: number;
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
  const corners: number[] = [];
  const triangles: number[] = [];
  const areas: number[] = [];
  const centre: [number, number, number] = [0, 0, 0];
  let [area, edge] = [0, 0];
  for (const piece of opening.pieces) {
    const first = corners.length / 3;
    for (const p of piece) corners.push(...subtract3(p, origin));
    piece.forEach((p, i) => {
      edge += length3(subtract3(piece[(i + 1) % piece.length] as Vec3, p));
    });
    for (let i = 1; i + 1 < piece.length; i++) {
      const s = triangleArea(piece[0] as Vec3, piece[i] as Vec3, piece[i + 1] as Vec3);
      if (!(s > 0)) continue;
      triangles.push(first, first + i, first + i + 1);
      areas.push(s);
      area += s;
      for (const k of [0, i, i + 1])
        for (const axis of [0, 1, 2] as const)
          centre[axis] += (s / 3) * ((piece[k] as Vec3)[axis] - origin[axis]);
    }
  }
  const diameter = (4 * area) / edge;
  const free = opening.kind === 'free';
  return {
    from: opening.from,
    to: opening.to,
    open: free && !isSlot(model, opening),
    triangles: Int32Array.from(triangles),
    areas: Float64Array.from(areas),
    corners: Float64Array.from(corners),
    centre: [centre[0] / area, centre[1] / area, centre[2] / area],
    heights: new Float64Array(corners.length / 3),
    area,
    diameter,
    laminar: laminarFactor(free || area > SLIT * diameter * diameter),
    door,
    passage: labels.get(opening.label) ?? -1,
  };
};

const triangleArea = (a: Vec3, b: Vec3, c: Vec3): number => {
  const [u, v] = [subtract3(b, a), subtract3(c, a)];
  return Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
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
