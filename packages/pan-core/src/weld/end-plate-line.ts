import type { Design, EndSeal } from '../design/index.js';
import { type Path, pathPoints } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { endPlateReach, endSealSizes } from '../pan/index.js';
import { plainLine, type SeamLine } from './seam-line.js';

/** How far an arc's chord may leave it, mm. */
const CHORD = 0.05;

/** Stretches of a flange's joint at a height, mm. */
export const jointLines = (joint: Path, z: number): readonly SeamLine[] =>
  joint.map((segment) => plainLine(pathPoints([segment], CHORD).map(([x, y]): Vec3 => [x, y, z])));

/** Where both ends of an end plate meet the flange's ends: down one face, along the underside, up the other. */
export const endPlateFeet = (design: Design, seal: EndSeal): readonly SeamLine[] => {
  const { half } = endSealSizes(seal);
  const [rear, front] = endPlateReach(design, seal);
  const under = -design.pan.flange.thickness;
  return [-half, half].map((off) => {
    const y = seal.across + off;
    return plainLine([
      [rear, y, 0],
      [rear, y, under],
      [front, y, under],
      [front, y, 0],
    ]);
  });
};

/** A round of an end plate where it meets the end wall's outside, or the inside that is trimmed to it. */
export const endPlateArc = (
  design: Design,
  seal: EndSeal,
  radius: number,
  side: 'outside' | 'inside',
): SeamLine => {
  const c = seal.centreAboveRail;
  const turn = Math.acos(c / radius);
  const [floor, t] = [design.pan.floor, design.pan.sheet.thickness];
  const inside = (seal.end === 'front' ? floor[0] : floor[floor.length - 1])![0];
  const out = seal.end === 'front' ? t : -t;
  const count = Math.max(2, Math.ceil((2 * turn) / (2 * Math.acos(1 - CHORD / radius))));
  const at = (x: number): readonly Vec3[] =>
    Array.from({ length: count + 1 }, (_, i): Vec3 => {
      const angle = turn * ((2 * i) / count - 1);
      return [x, seal.across + radius * Math.sin(angle), c - radius * Math.cos(angle)];
    });
  return plainLine(at(side === 'outside' ? inside + out : inside));
};

/** Lines round the rail without the stretches that end plates take, on the end walls. */
export const beyondEndPlates = (lines: readonly SeamLine[], design: Design): readonly SeamLine[] =>
  design.pan.flange.endSeals.reduce(
    (rest, seal) => rest.flatMap((line) => parted(line, design, seal)),
    lines,
  );

const parted = ({ root, face }: SeamLine, { pan: { floor } }: Design, seal: EndSeal): readonly SeamLine[] => {
  const wall = (seal.end === 'front' ? floor[0] : floor[floor.length - 1])![0];
  const { half } = endSealSizes(seal);
  const found: { readonly root: Vec3[]; readonly face: Vec3[] }[] = [];
  let open = false;
  const put = (i: number, from: number, to: number): void => {
    if (to - from < 1e-12) return;
    const at = (list: readonly Vec3[], t: number): Vec3 => between(list[i]!, list[i + 1]!, t);
    if (!open || from > 0) found.push({ root: [at(root, from)], face: [at(face, from)] });
    const last = found[found.length - 1]!;
    last.root.push(at(root, to));
    last.face.push(at(face, to));
    open = to === 1;
  };
  for (let i = 0; i + 1 < root.length; i++) {
    const [a, b] = [root[i]!, root[i + 1]!];
    const taken = [a, b].every(([x]) => Math.abs(x - wall) < 1e-6)
      ? takenShare(a[1], b[1], [seal.across - half, seal.across + half])
      : null;
    if (taken === null) put(i, 0, 1);
    else {
      put(i, 0, taken[0]);
      open = false;
      put(i, taken[1], 1);
    }
  }
  return found;
};

/** The share of a stretch from one place to another that lies between two limits; null for none. */
const takenShare = (from: number, to: number, [low, high]: Vec2): Vec2 | null => {
  if (Math.abs(to - from) < 1e-9) return null;
  const [p, q] = [(low - from) / (to - from), (high - from) / (to - from)];
  const [start, end] = [Math.max(0, Math.min(p, q)), Math.min(1, Math.max(p, q))];
  return end - start > 1e-12 ? [start, end] : null;
};

const between = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];
