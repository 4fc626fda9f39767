import type { Design } from 'pan-core/design/index.js';
import { buildPan, floorProfile, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part } from 'pan-core/sheet/index.js';
import { type Mutable, stepDesign } from './sample-design.js';

export const cut = (design: Design): readonly Part[] => cutParts(design, floorProfile(design), [], []);
export const whole = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};
export const named = (parts: readonly Part[], name: string): Part => {
  const found = parts.find((p) => p.name === name);
  if (found === undefined) throw new Error(`No part ${name} among ${parts.map((p) => p.name).join(', ')}`);
  return found;
};

/** A plain trough: 400 long, 120 deep, 200 wide, 2 mm sheet bent at 3 mm; K 0.43 by the table. */
export const trough = (change: (d: Mutable<Design>) => void = () => {}): Design =>
  stepDesign((d) => {
    d.pan.sheet = { material: 'mild steel', thickness: 2, bendRadius: 3 };
    d.pan.floor = [
      [400, 120],
      [0, 120],
    ];
    d.pan.joints.welded = [];
    change(d);
  });
export const BEND = (Math.PI / 2) * (3 + 0.43 * 2);
