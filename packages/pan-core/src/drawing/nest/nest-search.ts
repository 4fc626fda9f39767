import type { Vec2 } from '../../numeric/index.js';
import type { FitTable } from './nest-fit.js';
import { type LaidSheet, layPieces, type NestPiece } from './nest-lay.js';

/** Orders to try, by what comes first. */
const ORDERS: readonly ((piece: NestPiece) => number)[] = [
  (piece) => boxArea(piece),
  (piece) => Math.max(...size(piece)),
  (piece) => size(piece)[1],
  (piece) => size(piece)[0],
];

/** Shares of the square root of all the boxes' area at which a strip's width is tried. */
const WIDTHS = [0.5, 0.65, 0.8, 0.95, 1.1, 1.3, 1.6, 2];

const size = (piece: NestPiece): Vec2 => piece.shapes[0]?.size ?? [0, 0];

const boxArea = (piece: NestPiece): number => size(piece)[0] * size(piece)[1];

/** How the search is bounded: the room of a sheet, units, and how many changed orders are tried. */
export interface SearchRule {
  readonly room: Vec2;
  /** For so many pieces. */
  readonly changes: (pieces: number) => number;
  /** Area that a sheet's pieces use up, from their reach. */
  readonly used: (reach: Vec2) => number;
}

/**
 * Lays pieces on as few sheets as placing in several orders finds, the last one on a strip of the width that
 * uses least. The same pieces always give the same layout.
 */
export const searchLayout = (
  pieces: readonly NestPiece[],
  rule: SearchRule,
  fits: FitTable,
): readonly LaidSheet[] => {
  if (pieces.length === 0) return [];
  const single = searchSheet(pieces, rule, fits);
  if (single !== null) return [single];
  let best: { sheet: LaidSheet; over: readonly NestPiece[]; left: number } | null = null;
  for (const key of ORDERS) {
    const trial = layPieces(sorted(pieces, key), rule.room, fits);
    const left = trial.over.reduce((sum, piece) => sum + boxArea(piece), 0);
    if (best === null || left < best.left) best = { ...trial, left };
  }
  if (best === null || best.sheet.laid.length === 0) return [];
  return [best.sheet, ...searchLayout(best.over, rule, fits)];
};

/** All pieces on one sheet in the least corner of it, or null. */
const searchSheet = (pieces: readonly NestPiece[], rule: SearchRule, fits: FitTable): LaidSheet | null => {
  const side = Math.sqrt(pieces.reduce((sum, piece) => sum + boxArea(piece), 0));
  let best: { order: readonly NestPiece[]; width: number; sheet: LaidSheet; used: number } | null = null;
  const attempt = (order: readonly NestPiece[], width: number): boolean => {
    const { sheet, over } = layPieces(
      order,
      [rule.room[0], width],
      fits,
      (reach) => best !== null && rule.used(reach) >= best.used,
    );
    if (over.length > 0) return false;
    const used = rule.used(sheet.reach);
    if (best !== null && used >= best.used) return false;
    best = { order, width, sheet, used };
    return true;
  };
  const widths = [...WIDTHS.map((share) => Math.min(rule.room[1], share * side)), rule.room[1]];
  for (const key of ORDERS)
    for (const width of new Set(widths)) attempt(sorted(pieces, key), Math.round(width));
  const start = best as { order: readonly NestPiece[]; width: number; sheet: LaidSheet; used: number } | null;
  if (start === null) return null;
  const dice = lehmer(1);
  let { order, width } = start;
  for (let i = 0; i < rule.changes(pieces.length); i++) {
    const changed = [...order];
    const [a, b] = [dice(order.length), dice(order.length)];
    if (i % 2 === 0) [changed[a], changed[b]] = [changed[b]!, changed[a]!];
    else changed.splice(b, 0, ...changed.splice(a, 1));
    const wide = Math.round(Math.min(rule.room[1], width * (0.9 + 0.02 * dice(11))));
    if (attempt(changed, wide)) [order, width] = [changed, wide];
  }
  return (best as { sheet: LaidSheet } | null)?.sheet ?? null;
};

const sorted = (pieces: readonly NestPiece[], key: (piece: NestPiece) => number): readonly NestPiece[] =>
  [...pieces].sort((a, b) => key(b) - key(a) || a.part - b.part);

/** Whole numbers below n, the same row every time: Park and Miller, Comm. ACM 31 (1988), multiplier 48271. */
const lehmer = (seed: number): ((n: number) => number) => {
  let state = seed;
  return (n) => {
    state = (state * 48271) % 2147483647;
    return state % n;
  };
};
