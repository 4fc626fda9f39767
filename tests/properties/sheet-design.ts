import type { Design } from 'pan-core/design/index.js';
import { buildPan, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part } from 'pan-core/sheet/index.js';

/** All parts of a design, baffles and notch plates with them. */
export const wholeCut = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};
