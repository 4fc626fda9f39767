import { length3, subtract3, type Vec3 } from '../numeric/index.js';
import type { Skin, SkinPiece } from './skin.js';

/** An edge along which two different parts of the pan meet. */
export interface Meeting {
  readonly first: string;
  readonly second: string;
  /** mm, fold arcs as chords */
  readonly length: number;
}

/** What a piece of skin is cut from, so that a fold inside one part is no seam. */
export type PartOf = (piece: SkinPiece) => string;

/**
 * Lengths of all edges between parts, in the order met. Pieces that look the same way and share an edge
 * but come from different parts count too: that is a butt.
 */
export const skinMeetings = (skin: Skin, partOf: PartOf): readonly Meeting[] => {
  const parts = skin.pieces.map(partOf);
  const owners = new Map<string, number[]>();
  skin.pieces.forEach((piece, i) => {
    eachEdge(piece, (a, b) => {
      const key = `${a} ${b}`;
      owners.set(key, [...(owners.get(key) ?? []), i]);
    });
  });
  const lengths = new Map<string, Meeting>();
  skin.pieces.forEach((piece, i) => {
    eachEdge(piece, (a, b) => {
      // Each edge once, from the side that runs it upward in number.
      if (a > b) return;
      for (const j of owners.get(`${b} ${a}`) ?? []) {
        const [p, q] = [parts[i] as string, parts[j] as string].sort() as [string, string];
        if (p === q) continue;
        const span = length3(subtract3(skin.points[b] as Vec3, skin.points[a] as Vec3));
        const known = lengths.get(`${p}|${q}`);
        lengths.set(`${p}|${q}`, { first: p, second: q, length: (known?.length ?? 0) + span });
      }
    });
  });
  return [...lengths.values()];
};

const eachEdge = (piece: SkinPiece, visit: (a: number, b: number) => void): void => {
  piece.loop.forEach((a, i) => {
    visit(a, piece.loop[(i + 1) % piece.loop.length] as number);
  });
};
