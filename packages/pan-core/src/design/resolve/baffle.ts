import type { Baffle, Door, Hole } from '../design.js';
import type { BaffleKeys } from '../keys/baffle-keys.js';
import { thicknessOf } from './as-usual.js';
import { lidParts } from './lid.js';
import type { Notes } from './notes.js';

/** Lids and walls; one without a thickness is cut from the pan's own sheet. */
export const resolveBaffle = (
  keys: BaffleKeys,
  index: number,
  sheetThickness: number,
  notes: Notes,
): Baffle => {
  const path = ['baffles', index];
  const { name, span, fixed, holes } = keys;
  const thickness = thicknessOf(keys.thickness, sheetThickness, [...path, 'thickness'], notes);
  const both = {
    name,
    span: span ?? null,
    fixed:
      keys.tabs === undefined && keys.studs === undefined
        ? notes.takeWord(fixed, [...path, 'fixed'], 'baffle fixing')
        : 'bolted',
    thickness,
    holes: (holes ?? []).map(holeOf),
  } as const;
  const down = keys.lid_down ?? keys.tray_down;
  if (down !== undefined) {
    const place = { down, rear: keys.rear ?? 0, front: keys.front ?? 0 };
    return { kind: 'lid', ...place, ...both, ...lidParts(keys, path, notes) };
  }
  return {
    kind: 'wall',
    run: keys.across_at === undefined ? 'along' : 'across',
    at: keys.across_at ?? keys.along_at ?? 0,
    topDown: keys.top_down ?? null,
    weep: notes.take(keys.weep, [...path, 'weep'], 'length', 'weep'),
    doors: (keys.doors ?? []).map((door, i) => doorOf(door, [...path, 'doors', i], notes)),
    ...both,
  };
};

type DoorKeys = NonNullable<BaffleKeys['doors']>[number];

const doorOf = (keys: DoorKeys, path: readonly (string | number)[], notes: Notes): Door => ({
  size: keys.size,
  at: keys.y ?? keys.x ?? 0,
  up: notes.take(keys.up, [...path, 'up'], 'length', 'door up'),
  letsOil: keys.lets_oil,
});

type HoleKeys = NonNullable<BaffleKeys['holes']>[number];

const holeOf = ({ at, diameter, size }: HoleKeys): Hole => ({ at, size: size ?? diameter ?? 0 });
