import type { Vec2 } from '../numeric/index.js';

/** Lines joined end to end. */
export interface JoinedLines {
  /** Closed, the first point not repeated. */
  readonly loops: readonly (readonly Vec2[])[];
  readonly open: readonly (readonly Vec2[])[];
  /** Ends that did not meet exactly and were brought together, with the distance between them. */
  readonly gaps: readonly { readonly at: Vec2; readonly wide: number }[];
  /** Places where more than two ends meet; nothing is joined there. */
  readonly forks: readonly Vec2[];
  /** Lines that lay on another and were left out. */
  readonly doubled: number;
}

interface End {
  readonly line: number;
  readonly last: boolean;
  readonly at: Vec2;
}

const EXACT = 1e-6;

const apart = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const lengthOf = (line: readonly Vec2[]): number =>
  line.reduce((sum, p, i) => (i === 0 ? 0 : sum + apart(line[i - 1] as Vec2, p)), 0);

const startOf = (line: readonly Vec2[]): Vec2 => line[0] as Vec2;
const endOf = (line: readonly Vec2[]): Vec2 => line[line.length - 1] as Vec2;

/** Joins lines whose ends lie within `tolerance` of each other. */
export const joinLines = (lines: readonly (readonly Vec2[])[], tolerance: number): JoinedLines => {
  const sound = lines.filter((line) => line.length > 1 && lengthOf(line) > tolerance / 2);
  const single = withoutDoubles(sound);
  const closes = (line: readonly Vec2[]): boolean =>
    line.length > 3 && apart(startOf(line), endOf(line)) <= tolerance;
  const gaps: { at: Vec2; wide: number }[] = [];
  const loops = single.filter(closes).map((line): readonly Vec2[] => {
    const wide = apart(startOf(line), endOf(line));
    if (wide > EXACT) gaps.push({ at: startOf(line), wide });
    return line.slice(0, -1);
  });
  const strings = single.filter((line) => !closes(line));
  const { mates, forks } = pairEnds(strings, tolerance);
  const open: (readonly Vec2[])[] = [];
  const used = new Set<number>();
  for (let i = 0; i < strings.length; i++) {
    if (used.has(i)) continue;
    const walked = walk(i, strings, mates, used, gaps);
    if (walked.closed) loops.push(walked.points);
    else open.push(walked.points);
  }
  return { loops, open, gaps, forks, doubled: sound.length - single.length };
};

const withoutDoubles = (lines: readonly (readonly Vec2[])[]): readonly (readonly Vec2[])[] => {
  const seen = new Map<string, (readonly Vec2[])[]>();
  const cell = ([x, y]: Vec2): string => `${Math.round(x * 100)},${Math.round(y * 100)}`;
  return lines.filter((line) => {
    const key = `${[cell(startOf(line)), cell(endOf(line))].sort().join(' ')} ${line.length}`;
    const others = seen.get(key) ?? [];
    if (others.some((other) => liesOn(line, other) || liesOn([...line].reverse(), other))) return false;
    seen.set(key, [...others, line]);
    return true;
  });
};

const liesOn = (line: readonly Vec2[], other: readonly Vec2[]): boolean =>
  line.every((p, i) => apart(p, other[i] as Vec2) <= 1e-4);

/** Which end each end is joined to, by line × 2 + (1 for its last point). */
const pairEnds = (
  lines: readonly (readonly Vec2[])[],
  tolerance: number,
): { mates: ReadonlyMap<number, number>; forks: readonly Vec2[] } => {
  const ends = lines.flatMap((line, i): End[] => [
    { line: i, last: false, at: startOf(line) },
    { line: i, last: true, at: endOf(line) },
  ]);
  const cells = new Map<string, number[]>();
  const keyOf = (x: number, y: number): string => `${x},${y}`;
  const cellOf = ([x, y]: Vec2): Vec2 => [Math.floor(x / tolerance), Math.floor(y / tolerance)];
  ends.forEach(({ at }, i) => {
    const key = keyOf(...cellOf(at));
    cells.set(key, [...(cells.get(key) ?? []), i]);
  });
  const near = (i: number, within: number): readonly number[] => {
    const at = (ends[i] as End).at;
    const [cx, cy] = cellOf(at);
    const found: number[] = [];
    for (let x = cx - 1; x <= cx + 1; x++)
      for (let y = cy - 1; y <= cy + 1; y++)
        for (const j of cells.get(keyOf(x, y)) ?? [])
          if (j !== i && apart(at, (ends[j] as End).at) <= within) found.push(j);
    return found;
  };
  const mates = new Map<number, number>();
  const forks: Vec2[] = [];
  // Ends that meet exactly belong together even where others pass close by.
  for (const within of [EXACT, tolerance]) {
    for (let i = 0; i < ends.length; i++) {
      if (mates.has(i)) continue;
      const free = near(i, within).filter((j) => !mates.has(j));
      const [mate] = free;
      if (
        free.length === 1 &&
        mate !== undefined &&
        near(mate, within).filter((j) => !mates.has(j)).length === 1
      ) {
        mates.set(i, mate);
        mates.set(mate, i);
      } else if (free.length > 1 && !forks.some((at) => apart(at, (ends[i] as End).at) <= tolerance)) {
        forks.push((ends[i] as End).at);
      }
    }
  }
  return { mates, forks };
};

const walk = (
  start: number,
  lines: readonly (readonly Vec2[])[],
  mates: ReadonlyMap<number, number>,
  used: Set<number>,
  gaps: { at: Vec2; wide: number }[],
): { readonly points: readonly Vec2[]; readonly closed: boolean } => {
  used.add(start);
  let points = [...(lines[start] as readonly Vec2[])];
  let tail = start * 2 + 1;
  let turned = false;
  for (;;) {
    const next = mates.get(tail);
    if (next === undefined) {
      if (turned) return { points, closed: false };
      turned = true;
      points = points.reverse();
      tail = start * 2;
      continue;
    }
    const line = Math.floor(next / 2);
    const piece = lines[line] as readonly Vec2[];
    const along = next % 2 === 0 ? piece : [...piece].reverse();
    const meeting = endOf(points);
    const back = used.has(line);
    const other = back ? startOf(points) : startOf(along);
    const wide = apart(meeting, other);
    const middle: Vec2 = [(meeting[0] + other[0]) / 2, (meeting[1] + other[1]) / 2];
    if (wide > EXACT) gaps.push({ at: middle, wide });
    if (back) return { points: [middle, ...points.slice(1, -1)], closed: true };
    used.add(line);
    points = [...points.slice(0, -1), middle, ...along.slice(1)];
    tail = next % 2 === 0 ? next + 1 : next - 1;
  }
};
