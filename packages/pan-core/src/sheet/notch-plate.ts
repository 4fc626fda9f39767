import type { Design } from '../design/index.js';
import { insetEdges, pointInPath, polylinePath } from '../geometry/index.js';
import { add3, cross3, dot3, scale3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Panel } from '../pan/index.js';
import { bungHoles } from './belly-hole.js';
import { buttTrim } from './butt-trim.js';
import { planeFacet } from './cutter.js';
import { finishPart } from './finish.js';
import { viewFromOil } from './leaf.js';
import type { Part } from './part.js';
import { notchPartNames } from './part-name.js';

/** Points and planes nearer than this belong together, mm. */
const TOUCH = 1e-6;

/**
 * One straight-edged plate for each inside face that a notch gives the pan. The metal stands in the notch, so
 * where two of its plates meet the flatter one keeps its size and the other butts against its outside.
 */
export const notchParts = (design: Design, panels: readonly Panel[]): readonly Part[] => {
  const faces = panels.filter((p) => p.owner === 'notch');
  const names = notchPartNames(design, faces);
  return faces.map((_, i) => notchPart(design, faces, i, names[i]!));
};

const notchPart = (design: Design, faces: readonly Panel[], i: number, name: string): Part => {
  const face = faces[i]!;
  const { sheet } = design.pan;
  const { u, v } = viewFromOil(face.normal);
  const origin = face.loops[0]![0]!;
  const flat = (p: Vec3): Vec2 => {
    const r = subtract3(p, origin);
    return [dot3(r, u), dot3(r, v)];
  };
  // Seen from the oil a loop that is counter-clockwise from outside runs clockwise.
  const loops = face.loops.map((loop) => [...loop].reverse());
  const outer = loops[0]!;
  const trims = outer.map((a, k) => edgeTrim(faces, i, a, outer[(k + 1) % outer.length]!, sheet.thickness));
  const outline = insetEdges(outer.map(flat), trims) ?? outer.map(flat);
  const trimmed = trims.filter((t) => t > 0).length;
  const path = polylinePath(outline, true);
  return finishPart({
    name,
    what: `A wall of the notch "${design.pan.notches[face.index]?.name ?? ''}".`,
    quantity: 1,
    material: sheet.material,
    thickness: sheet.thickness,
    drawnFace: 'oil side',
    outline: path,
    openings: loops.slice(1).map((loop) => polylinePath(loop.map(flat), true)),
    faces: [planeFacet(origin, u, v)],
    holes: bungHoles(design, [planeFacet(origin, u, v)]).filter(
      ({ at }) => pointInPath(path, at) === 'inside',
    ),
    folds: [],
    marks: [],
    notes: [
      'Inside face up; its metal stands in the notch.',
      ...(trimmed > 0
        ? [
            `Cut back along ${trimmed === 1 ? 'one edge' : `${trimmed} edges`} to butt on the plate beside it.`,
          ]
        : []),
    ],
  });
};

const edgeTrim = (faces: readonly Panel[], i: number, a: Vec3, b: Vec3, thickness: number): number => {
  const face = faces[i]!;
  const mid = scale3(add3(a, b), 0.5);
  const along = unit3(subtract3(b, a));
  for (const [j, other] of faces.entries()) {
    if (j === i || !onRim(other, mid)) continue;
    const own = inward(face, along, mid);
    const its = inward(other, along, mid);
    // The other plate on this one's metal side: their thicknesses would run into each other.
    if (dot3(its, face.normal) < TOUCH) continue;
    const [mine, theirs] = [Math.abs(face.normal[2]), Math.abs(other.normal[2])];
    const yields = mine < theirs - TOUCH || (Math.abs(mine - theirs) <= TOUCH && i > j);
    if (yields) return buttTrim(Math.acos(Math.max(-1, Math.min(1, dot3(own, its)))), thickness);
  }
  return 0;
};

const onRim = (face: Panel, p: Vec3): boolean =>
  face.loops.some((loop) =>
    loop.some((a, k) => {
      const b = loop[(k + 1) % loop.length]!;
      const d = subtract3(b, a);
      const t = dot3(subtract3(p, a), d) / dot3(d, d);
      return t > 0 && t < 1 && Math.hypot(...subtract3(p, add3(a, scale3(d, t)))) < TOUCH;
    }),
  );

/** Direction in a face's plane, square to an edge, into the face. */
const inward = (face: Panel, along: Vec3, mid: Vec3): Vec3 => {
  const across = unit3(cross3(face.normal, along));
  const centre = scale3(
    face.loops[0]!.reduce((sum, p) => add3(sum, p), [0, 0, 0] as Vec3),
    1 / face.loops[0]!.length,
  );
  return dot3(subtract3(centre, mid), across) >= 0 ? across : scale3(across, -1);
};
