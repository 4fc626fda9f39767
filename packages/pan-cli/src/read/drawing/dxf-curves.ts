import type { DrawnCurve } from 'pan-core';
import {
  type Affine,
  type Curve,
  mapArea,
  moveCurve,
  NO_MAP,
  scaleMap,
  shiftMap,
  thenMap,
  turnMap,
} from 'pan-core';
import { drawingRefusal } from './drawing-problem.js';
import { dxfCurve, isMirrored, isTilted } from './dxf-curve.js';
import type { DxfBlock, DxfEntity, ParsedDxf } from './dxf-parse.js';

const DEEPEST = 16;
const MOST_CURVES = 20_000;
const MOST_POINTS = 400_000;
const MOST_INSERTS = 20_000;

/** Every curve of a drawing in its plane, blocks opened, and what none was made of. */
export const dxfCurves = (
  parsed: ParsedDxf,
): { readonly curves: readonly DrawnCurve[]; readonly passedOver: readonly string[] } => {
  const curves: DrawnCurve[] = [];
  const passed = new Map<string, number>();
  const blocks = new Map(Object.entries(parsed.blocks));
  let points = 0;
  let inserts = 0;
  const pass = (what: string): void => {
    passed.set(what, (passed.get(what) ?? 0) + 1);
  };
  const draw = (curve: Curve, layer: string): void => {
    points += curve.kind === 'ellipse' ? 1 : curve.points.length;
    curves.push({ curve, layer });
    if (curves.length > MOST_CURVES || points > MOST_POINTS)
      throw drawingRefusal(
        `It draws more than ${MOST_CURVES} curves or ${MOST_POINTS} points.`,
        'Keep only the rail in it.',
      );
  };
  const open = (
    entities: readonly DxfEntity[],
    map: Affine,
    layer: string | null,
    within: readonly string[],
  ): void => {
    for (const entity of entities) {
      const own =
        entity.layer === undefined || (entity.layer === '0' && layer !== null) ? layer : entity.layer;
      if (isTilted(entity)) pass('tilted out of the plane');
      else if (entity.type === 'INSERT') insert(entity, map, own ?? '0', within);
      else {
        const made = dxfCurve(entity);
        if (typeof made === 'string') pass(made);
        else for (const curve of made) draw(moveCurve(curve, map), own ?? '0');
      }
    }
  };
  const insert = (entity: DxfEntity, map: Affine, layer: string, within: readonly string[]): void => {
    const name = entity.name ?? '';
    const block = blocks.get(name);
    if (block?.entities === undefined) {
      pass('insert of an empty block');
      return;
    }
    if (within.includes(name))
      throw drawingRefusal(
        `Its block ${name.slice(0, 40)} contains itself.`,
        'Explode its blocks and save it again.',
      );
    if (within.length >= DEEPEST)
      throw drawingRefusal(`Its blocks lie more than ${DEEPEST} deep in one another.`, 'Explode them.');
    const [columns, rows] = [Math.max(1, entity.columnCount ?? 1), Math.max(1, entity.rowCount ?? 1)];
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) {
        inserts++;
        if (inserts > MOST_INSERTS)
          throw drawingRefusal(
            `It places blocks more than ${MOST_INSERTS} times.`,
            'Keep only the rail in it.',
          );
        const placed = thenMap(placeBlock(entity, block, column, row), map);
        if (mapArea(placed) === 0) pass('insert of no size');
        else open(block.entities, placed, layer, [...within, name]);
      }
  };
  open(parsed.entities, NO_MAP, null, []);
  return { curves, passedOver: [...passed].map(([what, count]) => `${count} ${what}`) };
};

/** DXF reference, INSERT: base point to 0, scale, array, turn, place, and over when mirrored. */
const placeBlock = (entity: DxfEntity, block: DxfBlock, column: number, row: number): Affine => {
  const base = block.position ?? { x: 0, y: 0 };
  const at = entity.position ?? { x: 0, y: 0 };
  return [
    shiftMap([0 - base.x, 0 - base.y]),
    scaleMap(entity.xScale ?? 1, entity.yScale ?? 1),
    shiftMap([column * (entity.columnSpacing ?? 0), row * (entity.rowSpacing ?? 0)]),
    turnMap(((entity.rotation ?? 0) * Math.PI) / 180),
    shiftMap([at.x, at.y]),
    ...(isMirrored(entity) ? [scaleMap(-1, 1)] : []),
  ].reduce(thenMap, NO_MAP);
};
