import type { Design } from '../design/index.js';
import { insetEdges, movePath, movePoint, reversePath, roundedPath } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { cutAway } from './belly.js';
import { bungHoles } from './belly-hole.js';
import { buttTrim } from './butt-trim.js';
import { type Cutter, mirroredFacet, planeFacet } from './cutter.js';
import { finishRegion } from './finish.js';
import type { Part } from './part.js';
import { wingPartName } from './part-name.js';
import { footEnd, type WingFrame } from './wing-frame.js';

/**
 * The plate that closes one end of a wing: the wing's inside section, its folded corners as arcs. It stands
 * outside the strip's end, and butts against the side plate's outside where that goes on past the wing.
 */
export const wingCap = (
  design: Design,
  frame: WingFrame,
  end: 'rear' | 'front',
  cutters: readonly Cutter[],
): readonly Part[] => {
  const { sheet } = design.pan;
  const x = end === 'rear' ? frame.rear : frame.front;
  const floor = footEnd(frame, end);
  const [wall, outer] = [frame.wall(x), frame.outer(x)];
  const section: readonly Vec2[] = [
    [wall, floor],
    [outer, floor],
    [outer, frame.top(x, outer)],
    [wall, frame.top(x, wall)],
  ];
  const trimmed = insetEdges(section, [0, 0, 0, capTrim(frame, end, sheet.thickness)]) ?? section;
  const radii = [0, frame.oneFloor ? sheet.bendRadius : 0, sheet.bendRadius, 0];
  const outline = roundedPath(trimmed.map((at, i) => ({ at, radius: radii[i] ?? 0 })));
  const facet = planeFacet([x, 0, 0], [0, frame.sign, 0], [0, 0, 1]);
  const region = cutAway({ loops: [outline] }, [facet], cutters);
  // Seen from the oil, left is at the right hand on a rear cap and at the left hand on a front cap.
  const flip = (end === 'rear') === (frame.sign === -1);
  return finishRegion(
    {
      name: wingPartName(frame.wing, `${end} cap`),
      what: `Closes the ${end} end of the wing "${frame.wing.name}".`,
      quantity: 1,
      material: sheet.material,
      thickness: sheet.thickness,
      drawnFace: 'oil side',
      holes: bungHoles(design, [facet]).map((h) =>
        flip ? { ...h, at: movePoint({ mirror: 'x' }, h.at) } : h,
      ),
      folds: [],
      faces: [flip ? mirroredFacet(facet) : facet],
      marks: [],
      notes: [
        'Inside face up, top of the wing at the top. Stands outside the strip’s end: corner open, inside edges touching.',
        'Its edge to the pan butts on the outside of the side plate.',
      ],
    },
    { loops: flip ? region.loops.map((p) => reversePath(movePath({ mirror: 'x' }, p))) : region.loops },
  );
};

const capTrim = (frame: WingFrame, end: 'rear' | 'front', thickness: number): number => {
  if (end === 'rear' ? frame.endsAtRear : frame.endsAtFront) return 0;
  const x = end === 'rear' ? frame.rear : frame.front;
  const away = end === 'rear' ? -1 : 1;
  // Plan angle between the cap, running outward, and the side plate, running away from the wing.
  const rise = frame.wall(x + away * 1e-3) - frame.wall(x);
  return buttTrim(Math.acos(rise / Math.hypot(rise, 1e-3)), thickness);
};
