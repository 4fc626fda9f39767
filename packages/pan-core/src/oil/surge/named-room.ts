import type { PanModel, Zone } from '../../pan/index.js';

/** A part of the pan whose oil is told apart in a series: cells of one zone joined by open space. */
export interface NamedRoom {
  readonly name: string;
  readonly cells: readonly number[];
}

/** Rooms in the order of their volume; slivers that stand alone go with the largest of their zone. */
export const namedRooms = (model: PanModel): readonly NamedRoom[] => {
  const group = model.cells.map((_, c) => c);
  const root = (c: number): number => (group[c] === c ? c : root(group[c] as number));
  for (const { from, to, kind, label } of model.openings) {
    if (kind === 'free' && label === '' && model.cells[from]?.zone === model.cells[to]?.zone)
      group[root(from)] = root(to);
  }
  const found = new Map<number, number[]>();
  model.cells.forEach((_, c) => {
    found.set(root(c), [...(found.get(root(c)) ?? []), c]);
  });
  const volume = (cells: readonly number[]): number =>
    cells.reduce((sum, c) => sum + (model.volumes[c] as number), 0);
  const whole = volume(model.cells.map((_, c) => c));
  const sorted = [...found.values()].sort((a, b) => volume(b) - volume(a));
  const zone = (cells: readonly number[]): Zone => model.cells[cells[0] as number]?.zone as Zone;
  const rooms: number[][] = [];
  for (const cells of sorted) {
    const same = rooms.find((r) => zone(r) === zone(cells));
    if (same !== undefined && volume(cells) < 0.005 * whole) same.push(...cells);
    else rooms.push([...cells]);
  }
  return rooms.map((cells): NamedRoom => {
    const kin = rooms.filter((r) => zone(r) === zone(cells));
    const name = zone(cells) as string;
    return { name: kin.length === 1 ? name : `${name} ${reach(model, cells)}`, cells };
  });
};

const reach = (model: PanModel, cells: readonly number[]): string => {
  const points = cells.flatMap((c) => model.cells[c]?.faces.flatMap((f) => f.loop) ?? []);
  const span = (axis: 0 | 1): string => {
    const v = points.map((p) => p[axis]);
    return `${Math.min(...v).toFixed(0)} to ${Math.max(...v).toFixed(0)}`;
  };
  return `x ${span(0)}, y ${span(1)}`;
};
