import { PanError } from '../../errors/index.js';
import type { Vec3 } from '../../numeric/index.js';
import { holds, type PanModel } from '../../pan/index.js';
import type { ReturnPlace } from './settings.js';

/** A cell into which a share of the returning oil falls. */
export interface ReturnSpot {
  readonly cell: number;
  readonly share: number;
}

/** How far below the rail a returning drop is looked for, mm: inside the pan, above everything in it. */
const JUST_INSIDE = 1;

/** The cells that returning oil falls into; each throw takes an equal share. */
export const returnSpots = (model: PanModel, place: ReturnPlace): readonly ReturnSpot[] => {
  if (typeof place !== 'string') return [{ cell: cellAt(model, place), share: 1 }];
  const throws = model.design.engine.crank?.throws ?? [];
  if (place === 'throws' && throws.length > 0) {
    return throws.map((x) => ({ cell: under(model, x), share: 1 / throws.length }));
  }
  const { floor } = model.design.pan;
  const ends = floor.map(([x]) => x);
  const [rear, front] = [Math.min(...ends), Math.max(...ends)];
  const inset = 0.02 * (front - rear);
  return [{ cell: under(model, place === 'rear' ? rear + inset : front - inset), share: 1 }];
};

/** The cell just under the rail at x, or the nearest along x where there is pan. */
const under = (model: PanModel, x: number): number => {
  const ends = model.design.pan.floor.map(([at]) => at);
  const [rear, front] = [Math.min(...ends), Math.max(...ends)];
  const inset = 0.02 * (front - rear);
  return cellAt(model, [Math.min(front - inset, Math.max(rear + inset, x)), 0, -JUST_INSIDE]);
};

/** The cell a point lies in. @throws PanError `input-range` for a point outside the pan */
export const cellAt = (model: PanModel, p: Vec3): number => {
  const cell = model.cells.findIndex((room) => holds(model.table, room, p));
  if (cell >= 0) return cell;
  throw new PanError({
    code: 'input-range',
    path: [],
    message: `There can be no oil at x ${p[0].toFixed(0)}, y ${p[1].toFixed(0)}, z ${p[2].toFixed(0)} mm: that is not inside the pan.`,
    advice: 'Give a point inside the pan, below the rail or in the crankcase.',
  });
};
