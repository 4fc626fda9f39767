import { lineSegment, type Path, pathArea, type Segment } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { type LeafEdge, type RimPlace, rimKey } from './leaf-edge.js';
import type { RimCorner } from './leaf-rim.js';
import { onBlank, type Placement, placePath } from './placement.js';
import type { FlatFold } from './unfold.js';

/** Rims joined across the folds: where an edge folds the walk goes over the bend zone's end to the other leaf. */
export const outlineLoops = (
  members: readonly number[],
  rims: ReadonlyMap<number, readonly (readonly RimCorner[])[]>,
  folded: ReadonlyMap<string, LeafEdge>,
  placements: ReadonlyMap<number, Placement>,
  flatFolds: readonly FlatFold[],
): readonly Path[] => {
  const byEdge = new Map(flatFolds.map((f) => [f.edge, f]));
  const open = new Set(
    members.flatMap((leaf) =>
      rims.get(leaf)!.flatMap((loop, l) => loop.map((_, edge) => rimKey({ leaf, loop: l, edge }))),
    ),
  );
  const loops: Path[] = [];
  for (const leaf of members) {
    rims.get(leaf)!.forEach((corners, l) => {
      corners.forEach((_, edge) => {
        const start = { leaf, loop: l, edge };
        if (!open.has(rimKey(start))) return;
        loops.push(walk(start, rims, folded, byEdge, placements, open));
      });
    });
  }
  return loops.filter((loop) => loop.length > 1 && Math.abs(pathArea(loop)) > 1e-9);
};

const walk = (
  start: RimPlace,
  rims: ReadonlyMap<number, readonly (readonly RimCorner[])[]>,
  folded: ReadonlyMap<string, LeafEdge>,
  byEdge: ReadonlyMap<LeafEdge, FlatFold>,
  placements: ReadonlyMap<number, Placement>,
  open: Set<string>,
): Path => {
  const path: Segment[] = [];
  const go = (from: Vec2, to: Vec2): void => {
    if (Math.hypot(from[0] - to[0], from[1] - to[1]) > 1e-12) path.push(lineSegment(from, to));
  };
  let place = start;
  while (open.delete(rimKey(place))) {
    const corners = rims.get(place.leaf)![place.loop]!;
    const { at, along } = placements.get(place.leaf)!;
    const corner = corners[place.edge]!;
    path.push(...placePath(corner.path, { at, along }));
    const fold = folded.get(rimKey(place));
    if (fold === undefined) {
      const next = (place.edge + 1) % corners.length;
      go(onBlank({ at, along }, corner.leave), onBlank({ at, along }, corners[next]!.enter));
      place = { ...place, edge: next };
      continue;
    }
    const { onA, onB, zone } = byEdge.get(fold)!;
    const isA = fold.a.leaf === place.leaf && fold.a.loop === place.loop && fold.a.edge === place.edge;
    const over = isA ? [onA[0], zone[0], zone[3], onB[0]] : [onB[1], zone[2], zone[1], onA[1]];
    over.slice(1).forEach((p, i) => {
      go(over[i]!, p);
    });
    const other = isA ? fold.b : fold.a;
    const count = rims.get(other.leaf)![other.loop]!.length;
    place = { ...other, edge: (other.edge + 1) % count };
  }
  return path;
};
