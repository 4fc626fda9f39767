import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Panel, Plate, Profile } from '../pan/index.js';
import { bellyParts } from './belly.js';
import { bendRule } from './bend-rule.js';
import { flangeParts } from './flange.js';
import type { Part } from './part.js';
import { sideParts } from './side-plate.js';
import { notchCutter, wingCutter } from './solid.js';
import { wingParts } from './wing.js';

/**
 * Every flat part of a pan, in the order a shop would cut them.
 *
 * @param plates the baffles fitted to the pan's inside
 * @param panels the pan's inside faces; those owned by a notch become plates
 * @throws PanError `shape-fold`, `sheet-cut` or `input-range` for what cannot be folded or cut
 */
export const cutParts = (
  design: Design,
  profile: Profile,
  plates: readonly Plate[],
  panels: readonly Panel[],
): readonly Part[] => {
  const rule = bendRule(design);
  const notches = design.pan.notches.map(notchCutter);
  const sides = (['left', 'right'] as const).flatMap((side) => {
    const wings = design.pan.wings.filter((w) => w.side === side);
    const notes = wings.map((w) => `Opening to the wing "${w.name}": its edge follows the wing's top line.`);
    const cutters = [...wings.map((w) => wingCutter(design, w)), ...notches];
    return sideParts(design, profile, rule, side, cutters, notes);
  });
  const wings = design.pan.wings.flatMap((wing) => wingParts(design, profile, rule, wing, notches));
  void plates;
  void panels;
  return freeze([
    ...bellyParts(design, profile, rule, notches),
    ...sides,
    ...wings,
    ...flangeParts(design, profile),
  ]);
};
