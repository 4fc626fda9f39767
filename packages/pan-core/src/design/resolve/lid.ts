import type { Lid } from '../baffle.js';
import type { BaffleKeys } from '../keys/baffle-keys.js';
import { boltOf } from './as-usual.js';
import type { Notes } from './notes.js';

type LidParts = Pick<Lid, 'tray' | 'slots' | 'louvres' | 'tabs' | 'studs'>;

/** Slots, louvres and mounts of a lid or tray; what is not asked for is left out. */
export const lidParts = (keys: BaffleKeys, path: readonly (string | number)[], notes: Notes): LidParts => {
  const { tray_down, slots, louvres, tabs, studs } = keys;
  return {
    ...(tray_down === undefined ? {} : { tray: true }),
    ...(slots === undefined
      ? {}
      : {
          slots: slots.map(({ inset, ...row }, i) => ({
            ...row,
            inset: notes.take(inset, [...path, 'slots', i, 'inset'], 'length', 'slot inset'),
          })),
        }),
    ...(louvres === undefined
      ? {}
      : {
          louvres: {
            ...louvres,
            bend: notes.take(louvres.bend, [...path, 'louvres', 'bend'], 'angle', 'louvre bend'),
            opens: notes.takeWord(louvres.opens, [...path, 'louvres', 'opens'], 'louvre opens'),
          },
        }),
    ...(tabs === undefined
      ? {}
      : {
          tabs: {
            eachSide: tabs.each_side,
            size: boltOf(tabs.size, [...path, 'tabs', 'size'], 'tab bolt', notes),
          },
        }),
    ...(studs === undefined ? {} : { studs }),
  };
};
