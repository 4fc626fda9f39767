import { tubeCrossings } from '../oil/index.js';
import type { PanModel } from '../pan/index.js';
import type { Check } from './report.js';

/** Room round a tube in a baffle's hole, mm on each side: common practice, no source. */
const ROUND = 1;

/** Baffles that the pickup's tube runs through without a hole: a lid cut so would not go over it. */
export const tubeThroughChecks = (model: PanModel): readonly Check[] => {
  const { bore, wall, route } = model.design.pickup;
  const size = Math.ceil(bore + 2 * wall + 2 * ROUND);
  return tubeCrossings(model, route).map(({ baffle, at: [x, y, z] }): Check => {
    const place = `x ${x.toFixed(0)}, y ${y.toFixed(0)}`;
    return {
      id: 'pickup_baffle',
      group: 'mouth',
      title: `pickup tube through ${baffle}`,
      status: 'warn',
      value: null,
      limit: null,
      unit: '',
      because: `The tube meets "${baffle}" at ${place}, z ${z.toFixed(0)} mm, where it has no hole.`,
      try: `Give "${baffle}" a hole of ${size} mm there, longer where the tube leans (for a lid holes: [{at: [${x.toFixed(0)}, ${y.toFixed(0)}], diameter: ${size}}], which the oil then meets too), split it at the tube, or lead the tube past it.`,
      margin: -0.4,
    };
  });
};
