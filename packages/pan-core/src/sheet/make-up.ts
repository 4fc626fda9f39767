import type { Design } from '../design/index.js';
import { offChord2 } from '../geometry/index.js';
import { subtract3, type Vec2, type Vec3 } from '../numeric/index.js';
import { buildPan, type Panel, type Profile, panelsOf, profilePieceNames } from '../pan/index.js';
import { type Leaf, leafOf } from './leaf.js';
import { notchPartNames } from './part-name.js';
import { wingFrame } from './wing-frame.js';

/** A flat inside face of the pan by what it belongs to, which way it looks, and a point of it. */
export interface Face {
  readonly owner: Panel['owner'];
  readonly index: number;
  readonly normal: Vec3;
  readonly centre: Vec3;
}

const UPRIGHT = 1 - 1e-9;

/**
 * What each inside face is cut as when the design asks for nothing else: one folded belly (or several strips,
 * counted from the rear, where corners are welded), two sides, a strip and two caps for a wing, a plate for
 * each face of a notch.
 */
export const usualPart = (
  design: Design,
  profile: Profile,
  panels: readonly Panel[],
): ((face: Face) => string) => {
  const strips = bellyStrips(profile);
  const notches = panels.filter((p) => p.owner === 'notch');
  const notchNames = notchPartNames(design, notches);
  return (face) => {
    switch (face.owner) {
      case 'belly':
        return strips(face);
      case 'wing':
        return wingGroup(design, profile, face);
      case 'notch': {
        const near = notches.map((p) => (alike(p, face) ? planeGap(p, face) : Number.POSITIVE_INFINITY));
        return notchNames[near.indexOf(Math.min(...near))] ?? 'notch';
      }
      default:
        return face.owner;
    }
  };
};

const alike = (p: Panel, f: Face): boolean =>
  p.index === f.index && p.normal.every((n, i) => Math.abs(n - f.normal[i]!) < 1e-6);

/** Distance from a face's middle to the nearest corner or middle of a panel: tells pieces of one plane apart. */
const planeGap = (panel: Panel, { centre }: Face): number => {
  const off = panel.loops[0]!.map((p) => subtract3(centre, p));
  const n = panel.normal;
  const height = Math.abs(off[0]![0] * n[0] + off[0]![1] * n[1] + off[0]![2] * n[2]);
  return 1e6 * height + Math.min(...off.map((d) => Math.hypot(...d)));
};

const bellyStrips = ({ corners, sharp }: Profile): ((face: Face) => string) => {
  const welds = corners.flatMap((corner, i) => (!corner.folded && Math.abs(corner.turn) > 1e-12 ? [i] : []));
  if (welds.length === 0) return () => 'belly';
  return ({ centre }) => {
    const at = nearestRun(sharp, [centre[0], centre[2]]);
    return `belly ${1 + welds.filter((w) => w >= at).length} of ${welds.length + 1}`;
  };
};

/** Which straight run of the sharp profile a point of the centre plane is nearest to. */
export const nearestRun = (sharp: readonly Vec2[], p: Vec2): number => {
  const away = sharp.slice(1).map((b, i) => offChord2(p, sharp[i]!, b));
  return away.indexOf(Math.min(...away));
};

const wingGroup = (design: Design, profile: Profile, face: Face): string => {
  const wing = design.pan.wings[face.index];
  if (wing === undefined) return 'wing';
  const word = wingWord(face);
  if (word.endsWith('cap')) return `${wing.name} ${word}`;
  if (wingFrame(design, profile, wing).oneFloor) return `${wing.name} strip`;
  return `${wing.name} ${word === 'floor' ? 'floor' : 'wall and top'}`;
};

const wingWord = ({ normal }: Pick<Face, 'normal'>): string => {
  if (Math.abs(normal[0]) > UPRIGHT) return `${normal[0] > 0 ? 'front' : 'rear'} cap`;
  if (Math.abs(normal[2]) < 0.5 * Math.abs(normal[1])) return 'outer wall';
  return normal[2] > 0 ? 'top' : 'floor';
};

/** The pan's sheet faces with sharp corners, named, in the order in which parts are cut. */
export const panLeaves = (design: Design, profile: Profile): readonly Leaf[] => {
  const panels = sharpPanels(design).filter((p) => SHEET.includes(p.owner));
  const group = usualPart(design, profile, panels);
  const words = faceWords(design, profile, panels);
  const order = panels.map((_, i) => i).sort((a, b) => rank(panels[a]!) - rank(panels[b]!));
  return order.map((i) => {
    const panel = panels[i]!;
    return leafOf(panel, words[i]!, group({ ...panel, centre: middle(panel.loops[0]!) }));
  });
};

const SHEET: readonly Panel['owner'][] = ['belly', 'side left', 'side right', 'wing', 'notch'];

/** Belly from the rear rail on, then the sides from the rear, then wings and notches. */
const rank = (panel: Panel): number => {
  const [x, , z] = middle(panel.loops[0]!);
  const owner = 1e7 * SHEET.indexOf(panel.owner) + 1e5 * panel.index;
  if (panel.owner === 'notch') return owner;
  // A rear wall lies behind the floor that meets it and a step behind what it leads up to.
  return (
    owner + x + (panel.owner === 'belly' ? 0.001 * z : 0) + (wingWord(panel) === 'outer wall' ? -1e4 : 0)
  );
};

/** The cells of the same pan with every corner sharp, and nothing inside it. */
const sharpPanels = (design: Design): readonly Panel[] => {
  const welded = design.pan.floor.map((_, i) => i);
  const pan = { ...design.pan, joints: { ...design.pan.joints, welded } };
  return panelsOf(buildPan({ ...design, pan, baffles: [] }));
};

const faceWords = (design: Design, profile: Profile, panels: readonly Panel[]): readonly string[] => {
  const pieces = profilePieceNames(design);
  const notches = panels.filter((p) => p.owner === 'notch');
  const notchNames = notchPartNames(design, notches);
  const words = panels.map((panel): string => {
    const [x, , z] = middle(panel.loops[0]!);
    if (panel.owner === 'belly') return pieces[nearestRun(profile.sharp, [x, z])] ?? 'belly';
    if (panel.owner === 'wing') return `${design.pan.wings[panel.index]?.name ?? 'wing'} ${wingWord(panel)}`;
    if (panel.owner === 'notch') return notchNames[notches.indexOf(panel)] ?? 'notch';
    return panel.owner;
  });
  const x = (i: number): number => middle(panels[i]!.loops[0]!)[0];
  return words.map((word, i) => {
    const same = words.flatMap((w, k) => (w === word ? [k] : [])).sort((a, b) => x(a) - x(b));
    return same.length === 1 ? word : `${word} ${same.indexOf(i) + 1}`;
  });
};

const middle = (loop: readonly Vec3[]): Vec3 => {
  const n = loop.length;
  return [0, 1, 2].map((k) => loop.reduce((sum, p) => sum + p[k]!, 0) / n) as unknown as Vec3;
};
