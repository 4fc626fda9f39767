import { cross3, dot3, scale3, subtract3, unit3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Panel } from '../pan/index.js';

/** Points nearer than this are one point, mm. */
export const LEAF_TOUCH = 1e-6;

/** A flat inside face of the pan with sharp corners, in axes of its own seen from the oil. */
export interface Leaf {
  /** What a builder calls it, its own among the leaves: "sump floor", "side left", "right wing top". */
  readonly name: string;
  /** The part it is cut with unless the design says otherwise. */
  readonly group: string;
  readonly owner: Panel['owner'];
  readonly index: number;
  /** Unit normal pointing out of the oil. */
  readonly normal: Vec3;
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  /** Outer loop counter-clockwise seen from the oil, holes clockwise. */
  readonly loops: readonly (readonly Vec3[])[];
}

/** Axes of a blank for a face seen from the oil: v as near upward as the face allows, u to the right. */
export const viewFromOil = (normal: Vec3): { readonly u: Vec3; readonly v: Vec3 } => {
  const up: Vec3 = Math.abs(normal[2]) > 0.99 ? [0, 1, 0] : [0, 0, 1];
  const v = unit3(subtract3(up, scale3(normal, dot3(up, normal))));
  return { u: cross3(v, scale3(normal, -1)), v };
};

/** A panel as a leaf; the belly lies with the left of the car up the blank, the rest with the rail up. */
export const leafOf = (panel: Panel, name: string, group: string): Leaf => {
  const belly = panel.owner === 'belly';
  const v: Vec3 = [0, 1, 0];
  const axes = belly ? { u: cross3(v, scale3(panel.normal, -1)), v } : viewFromOil(panel.normal);
  const first = panel.loops[0]!.reduce((a, b) => (dot3(b, axes.u) < dot3(a, axes.u) ? b : a));
  return {
    name,
    group,
    owner: panel.owner,
    index: panel.index,
    normal: panel.normal,
    // A belly leaf is measured from the centre plane, as the strip that it belongs to is.
    origin: belly ? [first[0], 0, first[2]] : first,
    ...axes,
    loops: panel.loops.map((loop) => [...loop].reverse()),
  };
};

/** A point of the leaf in the plane it is drawn in. */
export const leafFlat = (leaf: Pick<Leaf, 'origin' | 'u' | 'v'>, p: Vec3): Vec2 => {
  const r = subtract3(p, leaf.origin);
  return [dot3(r, leaf.u), dot3(r, leaf.v)];
};

/** The leaves with every corner of a neighbour that lies on an edge put into that edge. */
export const jointed = (leaves: readonly Leaf[]): readonly Leaf[] => {
  const corners = leaves.flatMap((leaf) => leaf.loops.flat());
  return leaves.map((leaf) => ({
    ...leaf,
    loops: leaf.loops.map((loop) => {
      const whole = loop.flatMap((a, i) => [a, ...between(a, loop[(i + 1) % loop.length]!, corners)]);
      return whole.filter((p, i) => distance3(p, whole[(i + 1) % whole.length]!) > LEAF_TOUCH);
    }),
  }));
};

const between = (a: Vec3, b: Vec3, corners: readonly Vec3[]): readonly Vec3[] => {
  const along = subtract3(b, a);
  const length = Math.hypot(...along);
  if (length < LEAF_TOUCH) return [];
  const found: { t: number; p: Vec3 }[] = [];
  for (const p of corners) {
    const r = subtract3(p, a);
    const t = dot3(r, along) / length;
    if (t < LEAF_TOUCH || t > length - LEAF_TOUCH) continue;
    const off = subtract3(r, scale3(along, t / length));
    if (Math.hypot(...off) > LEAF_TOUCH || found.some((f) => Math.abs(f.t - t) < LEAF_TOUCH)) continue;
    found.push({ t, p });
  }
  return found.sort((m, n) => m.t - n.t).map((f) => f.p);
};

export const distance3 = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
