import { pointInPath, polylinePath } from '../../geometry/index.js';
import type { Point2, RailHole } from '../design.js';
import type { Place } from '../field/index.js';
import type { DrawnHole } from '../rail-outline.js';
import { canBeFor, type DrawnThread, statedThread, threadsFor } from '../rail-thread.js';
import type { Notes } from './notes.js';

/** Circles about one centre within this are one hole: thread and tap drill, or a counterbore. */
const ONE_CENTRE = 0.3;

interface Wanted {
  readonly size: number | undefined;
  readonly sizes: readonly DrawnThread[];
}

/** Bolt holes among the circles of a drawing, on the page; which circles are none is said in `left`. */
export const drawnHoles = (
  circles: readonly DrawnHole[],
  wanted: Wanted,
  outline: readonly Point2[] | null,
  path: Place,
  notes: Notes,
): { readonly holes: readonly RailHole[]; readonly left: readonly string[] } => {
  const edge = outline === null ? null : polylinePath(outline, true);
  const inside = circles.filter(({ at }) => edge === null || pointInPath(edge, at) !== 'outside');
  const holes: RailHole[] = [];
  const other: number[] = [];
  const unsure = new Map<number, readonly number[]>();
  for (const group of byCentre(inside)) {
    const threads = threadsOf(group, wanted);
    const [thread] = threads;
    const at = group[0]!.at;
    if (thread === undefined) other.push(group[0]!.diameter);
    else if (threads.length > 1) unsure.set(Number(group[0]!.diameter.toFixed(2)), threads);
    else holes.push({ at, thread });
  }
  for (const [diameter, threads] of unsure)
    notes.refuse(path, {
      code: 'input-missing',
      says: `has holes of ${diameter} mm, which may be ${threads.map((t) => `M${t}`).join(' or ')}`,
      advice: `Say which: sizes: [{drawn: ${diameter} mm, size: M${threads[0]}}]`,
    });
  if (holes.length === 0 && unsure.size === 0)
    notes.refuse(path, {
      code: 'input-missing',
      says:
        circles.length === 0 ? 'holds no circle' : `holds ${circles.length} circles, none of a bolt’s size`,
      expected: 'a circle for each bolt hole, inside the outline',
      advice: 'Give size, or sizes with the diameters as drawn.',
    });
  const outside = circles.length - inside.length;
  return {
    holes,
    left: [
      ...(other.length === 0
        ? []
        : [`${other.length} circles of other sizes were left out (${sizesOf(other)})`]),
      ...(outside === 0 ? [] : [`${outside} circles outside the outline were left out`]),
    ],
  };
};

const sizesOf = (diameters: readonly number[]): string =>
  `${[...new Set(diameters.map((d) => Number(d.toFixed(1))))]
    .sort((a, b) => a - b)
    .slice(0, 5)
    .join(', ')} mm`;

const byCentre = (circles: readonly DrawnHole[]): readonly (readonly DrawnHole[])[] => {
  const groups: DrawnHole[][] = [];
  for (const one of circles) {
    const near = groups.find(
      ([first]) => Math.hypot(first!.at[0] - one.at[0], first!.at[1] - one.at[1]) <= ONE_CENTRE,
    );
    if (near === undefined) groups.push([one]);
    else near.push(one);
  }
  return groups.map((group) => group.sort((a, b) => a.diameter - b.diameter));
};

/** Threads that a hole's circles can stand for; empty for a hole that is no bolt's. */
const threadsOf = (group: readonly DrawnHole[], { size, sizes }: Wanted): readonly number[] => {
  const stated = group.flatMap(({ diameter }) => statedThread(sizes, diameter) ?? []);
  if (stated.length > 0) return stated.slice(0, 1);
  if (size !== undefined) return group.some(({ diameter }) => canBeFor(size, diameter)) ? [size] : [];
  const possible = group.map(({ diameter }) => threadsFor(diameter)).filter((threads) => threads.length > 0);
  const shared = (possible[0] ?? []).filter((thread) =>
    possible.every((threads) => threads.includes(thread)),
  );
  return shared.length > 0 ? shared : (possible[0] ?? []);
};
