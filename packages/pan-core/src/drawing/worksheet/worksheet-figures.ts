import type { PageItem } from '../page/page.js';
import { groundFigure, movesFigure, obstaclesFigure } from './figure-car.js';
import { crankFigure } from './figure-crank.js';
import { endsFigure } from './figure-ends.js';
import { mountedFigure, startFigure } from './figure-engine.js';
import { dipstickFigure, oilFigure } from './figure-oil.js';
import { distancesFigure, holesFigure, type NumberOf, railFigure } from './figure-rail.js';
import { scansFigure, shapesFigure } from './figure-shapes.js';
import { rearFigure, thingsFigure } from './figure-things.js';

const FIGURES: Readonly<Record<string, (n: NumberOf) => readonly PageItem[]>> = {
  start: startFigure,
  rail: railFigure,
  holes: holesFigure,
  distances: distancesFigure,
  crank: crankFigure,
  inside: (n) => thingsFigure(n, 'inside'),
  mounted: mountedFigure,
  carries: (n) => thingsFigure(n, 'carries'),
  rear: rearFigure,
  oil: oilFigure,
  ends: endsFigure,
  dipstick: dipstickFigure,
  ground: groundFigure,
  moves: movesFigure,
  obstacles: obstaclesFigure,
  shapes: shapesFigure,
  scans: scansFigure,
};

/** The drawing of a part of the worksheet, with the numbers of its rows; rows are found by the end of their key. */
export const worksheetFigure = (id: string, keys: readonly string[]): readonly PageItem[] => {
  const figure = FIGURES[id];
  if (figure === undefined) throw new Error(`worksheet: no drawing for ${id}`);
  return figure((end) => {
    const place = keys.findIndex((key) => key === end || key.endsWith(`.${end}`));
    if (place < 0) throw new Error(`worksheet: the drawing of ${id} shows ${end}, which is not on its page`);
    return place + 1;
  });
};
