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
    return { name: [zone(cells), ...tellApart(model, cells, kin)].join(' '), cells };
  });
};

/** Where a room lies, by the first axis that tells it from all its kin, else by all three; nothing for one alone. */
const tellApart = (
  model: PanModel,
  cells: readonly number[],
  kin: readonly (readonly number[])[],
): readonly string[] => {
  if (kin.length === 1) return [];
  const alone = ([0, 1, 2] as const).find((axis) => {
    const texts = kin.map((k) => reach(model, k, axis));
    return new Set(texts).size === texts.length;
  });
  const all = ([0, 1, 2] as const).map((axis) => reach(model, cells, axis));
  return alone === undefined ? [all.join(', ')] : [all[alone] as string];
};

const reach = (model: PanModel, cells: readonly number[], axis: 0 | 1 | 2): string => {
  const sign = axis === 2 ? -1 : 1;
  const spots = cells.flatMap((c) => model.cells[c]?.faces.flatMap((f) => f.loop) ?? []);
  const along = spots.map((p) => sign * p[axis] + 0);
  const span = `${Math.min(...along).toFixed(0)} to ${Math.max(...along).toFixed(0)} mm`;
  return axis === 2 ? `${span} down` : `${'xy'[axis]} ${span}`;
};
