import type { Path, Segment } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';

/** Anything drawn, for the shop's rules: pieces as they stand in the file, in mm. */
export interface DrawnFile {
  /** mm in one unit of the file; null when it does not say. */
  readonly unit: number | null;
  readonly pieces: readonly { readonly layer: string; readonly piece: Segment }[];
  /** Layers of words, one entry a text. */
  readonly texts: readonly string[];
  /** Layers of splines, ellipses and other curves that are no lines or arcs, one entry each. */
  readonly curves: readonly string[];
}

/** Ends farther apart than this do not meet, mm: a cutter's own rounding. */
export const MEET = 0.01;

interface End {
  readonly piece: number;
  readonly at: Vec2;
}

/** Pieces joined end to end. */
export interface Chains {
  readonly closed: readonly Path[];
  /** Ends that meet no other, or more than one other. */
  readonly stray: readonly Vec2[];
  readonly branching: readonly Vec2[];
}

/** Follows pieces from end to end; each piece is in one chain. */
export const chainPieces = (pieces: readonly Segment[]): Chains => {
  const near = endTable(pieces);
  const used = pieces.map(() => false);
  const stray: Vec2[] = [];
  const branching: Vec2[] = [];
  pieces.forEach((piece, i) => {
    for (const at of [piece.from, piece.to]) {
      const others = near(at).length - 1;
      if (others === 0) stray.push(at);
      else if (others > 1 && near(at)[0]?.piece === i) branching.push(at);
    }
  });
  const closed: Path[] = [];
  pieces.forEach((first, i) => {
    if (used[i]) return;
    used[i] = true;
    const chain: Segment[] = [first];
    for (;;) {
      const last = chain[chain.length - 1]!;
      const next = near(last.to).find((end) => !used[end.piece]);
      if (next === undefined) break;
      used[next.piece] = true;
      const piece = pieces[next.piece]!;
      chain.push(next.at === piece.from ? piece : turned(piece));
    }
    if (apart(chain[chain.length - 1]!.to, first.from) <= MEET) closed.push(chain);
  });
  return { closed, stray, branching };
};

/** Ends near a point, found through boxes twice as wide as the reach. */
const endTable = (pieces: readonly Segment[]): ((at: Vec2) => readonly End[]) => {
  const boxes = new Map<string, End[]>();
  const box = (v: number): number => Math.floor(v / (2 * MEET));
  pieces.forEach((piece, i) => {
    for (const at of [piece.from, piece.to]) {
      const key = `${box(at[0])} ${box(at[1])}`;
      const row = boxes.get(key) ?? [];
      row.push({ piece: i, at });
      boxes.set(key, row);
    }
  });
  return (at) => {
    const found: End[] = [];
    const [x, y] = [box(at[0]), box(at[1])];
    for (let u = x - 1; u <= x + 1; u++)
      for (let v = y - 1; v <= y + 1; v++)
        for (const end of boxes.get(`${u} ${v}`) ?? []) if (apart(end.at, at) <= MEET) found.push(end);
    return found;
  };
};

const apart = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

const turned = (piece: Segment): Segment =>
  piece.kind === 'line'
    ? { ...piece, from: piece.to, to: piece.from }
    : { ...piece, from: piece.to, to: piece.from, sweep: -piece.sweep };
