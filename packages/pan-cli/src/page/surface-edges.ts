import type { OilSlice, Point2, RoomSlice } from 'pan-core';

/** Nearer to a wall than this, mm, a line is the wall. */
const AT_WALL = 0.02;

type Edge = readonly [Point2, Point2];

const edges = (outline: readonly Point2[]): readonly Edge[] =>
  outline.map((p, i): Edge => [p, outline[(i + 1) % outline.length] as Point2]);

const distance = ([a, b]: Edge, p: Point2): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = Math.sqrt(dx * dx + dy * dy);
  return size === 0 ? Infinity : Math.abs(dx * (p[1] - a[1]) - dy * (p[0] - a[0])) / size;
};

/** Edges of a cell's oil that lie on none of the cell's own walls: where its surface is. */
export const surfaceEdges = (wet: OilSlice, rooms: readonly RoomSlice[]): readonly Edge[] => {
  const walls = edges(rooms.find(({ cell }) => cell === wet.cell)?.outline ?? []);
  return edges(wet.outline).filter(([a, b]) => {
    const middle: Point2 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    return walls.every((wall) => distance(wall, middle) > AT_WALL);
  });
};
