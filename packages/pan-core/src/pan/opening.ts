import {
  connectedPieces,
  intersectConvexPolygons,
  liftPoint,
  type PlaneEquation,
  type PlaneTable,
  type Polygon,
  polygonArea,
  subtractAll,
} from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import type { Barrier, PassageKind } from './barrier.js';
import type { Room, RoomFace } from './cell.js';
import { flatLoop, flatScale } from './flat-loop.js';

/**
 * A connected way between two cells. Oil stands on both sides above its lowest point or spills over it.
 * `free` is open space and never closes; holes neither.
 */
export interface Opening {
  readonly from: number;
  readonly to: number;
  readonly kind: 'free' | PassageKind;
  /** Doors let oil pass only from `from` to `to`; everything else passes both ways. */
  readonly oneWay: boolean;
  readonly label: string;
  /** Baffle it passes, or null. */
  readonly baffle: number | null;
  readonly plane: number;
  readonly pieces: readonly (readonly Vec3[])[];
  readonly area: number;
}

/** Metal or a baffle covering a face: what is left of it when its openings are taken away. */
export interface Cover {
  readonly cell: number;
  readonly face: RoomFace;
  readonly pieces: readonly Polygon[];
}

/** Part of a baffle between two cells, doors and holes included; `area` is metal only. */
export interface Blocked {
  readonly baffle: number;
  /** The cell its thickness stands in. */
  readonly cell: number;
  readonly area: number;
  /** In the plane's flat axes. */
  readonly pieces: readonly Polygon[];
}

export interface OpeningResult {
  readonly openings: readonly Opening[];
  /** Faces or parts of faces with nothing on the other side. */
  readonly bare: readonly Cover[];
  /** Each baffle as found between cells. */
  readonly covered: readonly Blocked[];
  /** Area of each passage found, by baffle and place in its list. */
  readonly passed: ReadonlyMap<string, number>;
}

interface Placed {
  readonly cell: number;
  readonly face: RoomFace;
  readonly flat: Polygon;
}

/** Finds every opening by plane number: the common part of two opposite faces, less baffles, plus passages. */
export const findOpenings = (
  table: PlaneTable,
  rooms: readonly Room[],
  barriers: readonly Barrier[],
): OpeningResult => {
  const openings: Opening[] = [];
  const bare: Cover[] = [];
  const covered: Blocked[] = [];
  const passed = new Map<string, number>();
  for (const [plane, { up, down }] of facesByPlane(table, rooms)) {
    const equation = table.planes[plane] as PlaneEquation;
    const scale = flatScale(equation);
    const here = barriers.filter((b) => b.plane === plane);
    const lift = (p: Polygon): readonly Vec3[] => p.map((q) => liftPoint(equation, q));
    const area = (pieces: readonly Polygon[]): number =>
      pieces.reduce((sum, p) => sum + Math.abs(polygonArea(p)), 0) * scale;
    const meets = new Map<Placed, Polygon[]>();
    for (const a of up)
      for (const b of down) {
        const common = intersectConvexPolygons(a.flat, b.flat);
        if (common.length === 0) continue;
        meets.set(a, [...(meets.get(a) ?? []), common]);
        meets.set(b, [...(meets.get(b) ?? []), common]);
        const add = (
          kind: Opening['kind'],
          label: string,
          baffle: number | null,
          way: number,
          p: readonly Polygon[],
        ): void => {
          for (const pieces of connectedPieces(p)) {
            const flip = way < 0;
            openings.push({
              from: flip ? b.cell : a.cell,
              to: flip ? a.cell : b.cell,
              kind,
              oneWay: kind === 'door',
              label,
              baffle,
              plane,
              pieces: pieces.map(lift),
              area: area(pieces),
            });
          }
        };
        const free = subtractAll(
          [common],
          here.flatMap((h) => h.covers),
        );
        if (free.length > 0) add('free', lipLabel(here), here[0]?.index ?? null, 0, free);
        for (const barrier of here) {
          const blocked = barrier.covers
            .map((c) => intersectConvexPolygons(common, c))
            .filter((p) => p.length > 0);
          if (blocked.length === 0) continue;
          const holder = barrier.thicknessSide === 1 ? b : a;
          let open = 0;
          barrier.passages.forEach((passage, i) => {
            const through = blocked
              .map((p) => intersectConvexPolygons(p, passage.polygon))
              .filter((p) => p.length > 0);
            if (through.length === 0) return;
            open += area(through);
            const key = `${barrier.index}/${i}`;
            passed.set(key, (passed.get(key) ?? 0) + area(through));
            add(passage.kind, passage.label, barrier.index, passage.way, through);
          });
          covered.push({
            baffle: barrier.index,
            cell: holder.cell,
            area: area(blocked) - open,
            pieces: blocked,
          });
        }
      }
    for (const placed of [...up, ...down]) {
      const pieces = subtractAll([placed.flat], meets.get(placed) ?? []);
      const left = pieces.filter((p) => Math.abs(polygonArea(p)) > 1e-7);
      if (left.length > 0) bare.push({ cell: placed.cell, face: placed.face, pieces: left });
    }
  }
  return { openings, bare, covered, passed };
};

const lipLabel = (here: readonly Barrier[]): string =>
  here.length === 0 ? '' : `edge of ${here.map((b) => b.baffle.name).join(' and ')}`;

const facesByPlane = (
  table: PlaneTable,
  rooms: readonly Room[],
): ReadonlyMap<number, { readonly up: Placed[]; readonly down: Placed[] }> => {
  const byPlane = new Map<number, { up: Placed[]; down: Placed[] }>();
  rooms.forEach((room, cell) => {
    for (const face of room.faces) {
      const lists = byPlane.get(face.plane) ?? { up: [], down: [] };
      byPlane.set(face.plane, lists);
      (face.side === 1 ? lists.up : lists.down).push({ cell, face, flat: flatLoop(table, face) });
    }
  });
  return byPlane;
};
