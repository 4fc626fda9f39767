import { PanError } from '../../errors/index.js';
import { arcSegment, circlePath, lineSegment, type Segment } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { DrawnFile } from './cut-line.js';
import type { Entity } from './dxf-entity.js';
import type { Group } from './dxf-group.js';
import { type ShopRule, shopRules } from './shop-rule.js';

/** Our own layer of cuts. */
const isCut = (layer: string): boolean => layer === 'through';

/** Entities as they will stand in the file, read back from their own written numbers. */
export const drawnEntities = (entities: readonly Entity[]): DrawnFile => ({
  unit: 1,
  pieces: entities.flatMap((entity) => piecesOf(entity).map((piece) => ({ layer: entity.layer, piece }))),
  texts: entities.filter((entity) => entity.type === 'TEXT').map((entity) => entity.layer),
  curves: [],
});

/** The shop's rules for our own drawing of a sheet of a thickness, mm. */
export const ownRules = (entities: readonly Entity[], thickness: number | null): readonly ShopRule[] =>
  shopRules(drawnEntities(entities), { isCut, thickness });

/**
 * Proves that what is about to be written can be cut from.
 *
 * @throws PanError `sheet-cut` with every rule broken
 */
export const requireShopRules = (entities: readonly Entity[]): void => {
  if (!entities.some((entity) => isCut(entity.layer))) return;
  const broken = ownRules(entities, null).filter((rule) => rule.status === 'fail');
  if (broken.length === 0) return;
  throw new PanError(
    broken.map(({ title, because, at }) => ({
      code: 'sheet-cut',
      path: [],
      message: `A drawing cannot be cut from (${title}): ${because}${at === null ? '' : ` The first is at x = ${at[0].toFixed(2)}, y = ${at[1].toFixed(2)} mm.`}`,
      advice: 'Please report this with the design file that caused it.',
    })),
  );
};

const piecesOf = ({ type, body }: Entity): readonly Segment[] => {
  const value = (code: number): number => Number(body.find(([c]) => c === code)?.[1]);
  switch (type) {
    case 'LINE':
      return [lineSegment([value(10), value(20)], [value(11), value(21)])];
    case 'CIRCLE':
      return circlePath([value(10), value(20)], value(40));
    case 'LWPOLYLINE':
      return polylinePieces(body, value(70) === 1);
    default:
      return [];
  }
};

const polylinePieces = (body: readonly Group[], closed: boolean): readonly Segment[] => {
  const corners: { x: number; y: number; bulge: number }[] = [];
  for (const [code, text] of body) {
    if (code === 10) corners.push({ x: Number(text), y: 0, bulge: 0 });
    const last = corners[corners.length - 1];
    if (last === undefined) continue;
    if (code === 20) last.y = Number(text);
    if (code === 42) last.bulge = Number(text);
  }
  return corners.flatMap((a, i): Segment[] => {
    const b = corners[i + 1] ?? (closed ? corners[0] : undefined);
    return b === undefined ? [] : [bulgePiece([a.x, a.y], [b.x, b.y], a.bulge)];
  });
};

/** The centre lies on the chord's own middle line, (1 − b²)/(4b) of the chord to its left. */
const bulgePiece = (from: Vec2, to: Vec2, bulge: number): Segment => {
  if (bulge === 0) return lineSegment(from, to);
  const off = (1 - bulge * bulge) / (4 * bulge);
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const centre: Vec2 = [(from[0] + to[0]) / 2 - dy * off, (from[1] + to[1]) / 2 + dx * off];
  return arcSegment(centre, from, to, 4 * Math.atan(bulge));
};
