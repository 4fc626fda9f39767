import type { Manoeuvre } from './design.js';
import table from './manoeuvre-presets.json' with { type: 'json' };

/** A kind of driving with manoeuvres of its own. */
export type PresetName = 'street' | 'autocross' | 'track' | 'slicks' | 'drag' | 'rally';

/** The kinds of driving there are manoeuvres for. */
export const presetNames: readonly PresetName[] = Object.freeze(Object.keys(table.presets) as PresetName[]);

/** Share of each limit that tyres give when they brake and turn at once. */
const COMBINED = 0.7;

/** Stop, both turns, drive off, and both turns on the brakes. */
export const presetManoeuvres = (name: PresetName): readonly Manoeuvre[] => {
  const { turn, brake, accelerate, seconds } = table.presets[name];
  const one = (what: string, forward: number, left: number): Manoeuvre => ({
    name: `${name}: ${what}`,
    forward,
    left,
    grade: 0,
    seconds,
    via: [],
  });
  return [
    one('stop', -brake, 0),
    one('left turn', 0, turn),
    one('right turn', 0, -turn),
    one('drive off', accelerate, 0),
    one('brake into left', -COMBINED * brake, COMBINED * turn),
    one('brake into right', -COMBINED * brake, -COMBINED * turn),
  ];
};
