import { cross3, dot3, length3, subtract3, type Vec3 } from '../numeric/index.js';
import type { Skin, SkinPiece } from './skin.js';

/** How two faces lie to each other seen from outside the pan. */
export type Corner = 'outward' | 'inward' | 'flat';

/** All edges along which two different parts of the pan meet in one way, parts by key. */
export interface Meeting {
  readonly first: string;
  readonly second: string;
  readonly corner: Corner;
  /** mm, fold arcs as chords */
  readonly length: number;
  /** Those edges, each as two places among the skin's points. */
  readonly edges: readonly SkinEdge[];
}

/** Two places among a skin's points. */
export type SkinEdge = readonly [from: number, to: number];

/** Sine of the angle under which two faces count as one plane. */
const FLAT = 1e-6;

/**
 * Lengths of all edges between parts, in the order met. A fold inside one part is no meeting; pieces of
 * two parts in one plane meet all the same.
 */
export const skinMeetings = (skin: Skin, partOf: (piece: SkinPiece) => string): readonly Meeting[] => {
  const parts = skin.pieces.map(partOf);
  const owners = new Map<string, number[]>();
  skin.pieces.forEach((piece, i) => {
    eachEdge(piece, (a, b) => {
      const key = `${a} ${b}`;
      owners.set(key, [...(owners.get(key) ?? []), i]);
    });
  });
  const found = new Map<string, Meeting>();
  skin.pieces.forEach((piece, i) => {
    eachEdge(piece, (a, b) => {
      // Each edge once, from the side that runs it upward in number.
      if (a > b) return;
      for (const j of owners.get(`${b} ${a}`) ?? []) {
        const [first, second] = [parts[i] as string, parts[j] as string].sort() as [string, string];
        if (first === second) continue;
        const along = subtract3(skin.points[b] as Vec3, skin.points[a] as Vec3);
        const corner = cornerOf(piece.normal, (skin.pieces[j] as SkinPiece).normal, along);
        const key = `${first}|${second}|${corner}`;
        const before = found.get(key);
        const length = (before?.length ?? 0) + length3(along);
        found.set(key, { first, second, corner, length, edges: [...(before?.edges ?? []), [a, b]] });
      }
    });
  });
  return [...found.values()];
};

/** Faces run counter-clockwise from outside, so at an outward corner n₁ × n₂ looks along the first one's edge. */
const cornerOf = (first: Vec3, second: Vec3, along: Vec3): Corner => {
  const turn = dot3(cross3(first, second), along) / length3(along);
  return Math.abs(turn) < FLAT ? 'flat' : turn > 0 ? 'outward' : 'inward';
};

const eachEdge = (piece: SkinPiece, visit: (a: number, b: number) => void): void => {
  piece.loop.forEach((a, i) => {
    visit(a, piece.loop[(i + 1) % piece.loop.length] as number);
  });
};
