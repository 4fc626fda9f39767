import type { Pickup, Stay } from '../design.js';
import type { DesignKeys } from '../keys/design-keys.js';
import { boltOf, thicknessOf } from './as-usual.js';
import type { Notes } from './notes.js';

type PickupKeys = DesignKeys['pickup'];

/** The pickup; a stay without a thickness is cut from the pan's own sheet. */
export const resolvePickup = (keys: PickupKeys, sheetThickness: number, notes: Notes): Pickup => {
  const path = ['pickup'];
  return {
    at: keys.at,
    gap: notes.take(keys.gap, [...path, 'gap'], 'length', 'pickup gap'),
    mouth: notes.take(keys.mouth, [...path, 'mouth'], 'length', 'pickup mouth'),
    bore: notes.take(keys.bore, [...path, 'bore'], 'length', 'pickup bore'),
    wall: notes.take(keys.wall, [...path, 'wall'], 'length', 'pickup wall'),
    route: keys.route ?? [],
    ...(keys.stay === undefined ? {} : { stay: stayOf(keys.stay, sheetThickness, notes) }),
  };
};

const stayOf = (keys: NonNullable<PickupKeys['stay']>, sheetThickness: number, notes: Notes): Stay => {
  const path = ['pickup', 'stay'];
  const thickness = thicknessOf(keys.thickness, sheetThickness, [...path, 'thickness'], notes);
  return {
    at: keys.at,
    size: keys.size,
    clip: boltOf(keys.clip, [...path, 'clip'], 'stay clip', notes),
    width: notes.take(keys.width, [...path, 'width'], 'length', 'stay width'),
    thickness,
  };
};
