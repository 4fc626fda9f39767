import type { Dowel, EndSeal, Flange, FlangeSplit, Point2, RailHole, Sheet } from '../design.js';
import type { DesignKeys } from '../keys/design-keys.js';
import { findMaterial } from '../material.js';
import type { Notes } from './notes.js';

type FlangeKeys = NonNullable<DesignKeys['pan']['flange']>;

/** A centre written in the file may be rounded; a hole this near is the one meant, mm. */
const SAME_HOLE = 1;
const PATH = ['pan', 'flange'] as const;

export const resolveFlange = (
  keys: FlangeKeys | undefined,
  sheet: Sheet,
  railHoles: readonly RailHole[],
  notes: Notes,
): Flange => {
  const usual = findMaterial(sheet.material)?.metal === 'aluminium' ? 'flange aluminium' : 'flange steel';
  const dowels = (keys?.dowels ?? []).map(
    (dowel, i): Dowel => ({
      at: dowel.at,
      size: dowel.size,
      fit: notes.takeWord(dowel.fit, [...PATH, 'dowels', i, 'fit'], 'dowel fit'),
    }),
  );
  return {
    thickness: notes.take(keys?.thickness, [...PATH, 'thickness'], 'length', usual),
    beyond: notes.take(keys?.beyond, [...PATH, 'beyond'], 'length', 'flange beyond rail'),
    fit: notes.takeWord(keys?.fit, [...PATH, 'fit'], 'hole fit'),
    gasket: notes.takeWord(keys?.gasket, [...PATH, 'gasket'], 'flange gasket'),
    groove: keys?.groove ?? null,
    dowels,
    drillAfterWeld: laterHoles(keys?.drill_after_weld, railHoles, dowels, notes),
    lighten: keys?.lighten ?? null,
    split: resolveSplit(keys?.split, notes),
    endSeals: (keys?.end_seals ?? []).map((seal, i) => resolveEndSeal(seal, i, notes)),
  };
};

const resolveSplit = (keys: FlangeKeys['split'], notes: Notes): FlangeSplit | null => {
  if (keys === undefined) return null;
  const joint = notes.takeWord(keys.joint, [...PATH, 'split', 'joint'], 'split joint');
  return keys.across_at !== undefined
    ? { way: 'across', at: keys.across_at, joint }
    : { way: 'lengthwise', at: keys.lengthwise_at ?? 0, joint };
};

const resolveEndSeal = (
  keys: NonNullable<FlangeKeys['end_seals']>[number],
  index: number,
  notes: Notes,
): EndSeal => {
  const path = [...PATH, 'end_seals', index];
  return {
    end: keys.end,
    radius: keys.radius,
    centreAboveRail: keys.centre_above_rail,
    across: notes.take(keys.across, [...path, 'across'], 'length', 'end seal across'),
    land: notes.take(keys.land, [...path, 'land'], 'length', 'end seal land'),
    groove: keys.groove ?? null,
  };
};

/** The holes meant, by their own centres; a place without a hole is refused. */
const laterHoles = (
  given: FlangeKeys['drill_after_weld'],
  railHoles: readonly RailHole[],
  dowels: readonly Dowel[],
  notes: Notes,
): readonly Point2[] => {
  if (given === undefined) return [];
  const all = [...(given === 'dowels' ? [] : railHoles), ...dowels].map(({ at }) => at);
  if (typeof given === 'string') return all;
  return given.flatMap((place, i) => {
    const found = all.find(([x, y]) => Math.hypot(x - place[0], y - place[1]) <= SAME_HOLE);
    if (found !== undefined) return [found];
    notes.refuse([...PATH, 'drill_after_weld', i], {
      code: 'input-range',
      says: `is ${place[0]}, ${place[1]} mm, and no bolt or dowel hole is there`,
      expected: 'the centre of a hole in engine.rail_holes or pan.flange.dowels, within 1 mm',
    });
    return [];
  });
};
