import type { Design, Lid, Wing } from '../design/index.js';
import { pathBox, pathDistance } from '../geometry/index.js';
import { depthAt, formedFloor, type Profile } from '../pan/index.js';
import { atLeast, type SheetFinding } from './finding.js';
import { mountHoles, TAB_FOOT, type TabPlace, tabPlaces } from './lid-tab.js';
import type { Part, RoundHole } from './part.js';

/** Whether every tab of a lid or tray has the pan’s wall behind its whole foot. */
export const tabFindings = (design: Design, profile: Profile): readonly SheetFinding[] => {
  const lids = design.baffles.filter((b): b is Lid => b.kind === 'lid' && b.tabs !== undefined);
  return lids.length === 0 ? [] : [walls(design, profile, lids)];
};

const walls = (design: Design, profile: Profile, lids: readonly Lid[]): SheetFinding => {
  const floor = formedFloor(profile);
  const short = lids.flatMap((lid) =>
    tabPlaces(design, lid).map((place) => {
      const behind = wallBelow(design, place, depthAt(floor, place.x) ?? 0);
      return { lid, place, missing: lid.down + TAB_FOOT - behind };
    }),
  );
  const worst = short.reduce((a, b) => (b.missing > a.missing ? b : a));
  const { lid, place } = worst;
  const fails = worst.missing > 1e-9;
  const count = short.filter(({ missing }) => missing > 1e-9).length;
  return {
    id: 'tab_wall',
    title: 'wall behind the tabs',
    status: fails ? 'fail' : 'pass',
    value: count,
    limit: 0,
    unit: '1',
    because: fails
      ? `the ${place.side} tab of ${lid.name} at x ${place.x.toFixed(0)} hangs ${worst.missing.toFixed(0)} mm over the wing’s opening or the floor`
      : `every foot of ${TAB_FOOT} mm stands on a side`,
    try: fails
      ? 'Raise the plate, move its ends so that the tabs stand elsewhere, or hang a tray from studs.'
      : '',
  };
};

/** Metal between a bolt’s hole and the next cut or the plate’s edge, in thicknesses (common practice, no source). */
const RIM = 2;

/** How near a lid’s bolts come to its slots, louvres and edges. */
export const mountFindings = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const rims = design.baffles
    .filter((b): b is Lid => b.kind === 'lid' && (b.tabs !== undefined || b.studs !== undefined))
    .flatMap((lid) => {
      const words = new Set(mountHoles(design, lid).map(({ what }) => what));
      return parts
        .filter((part) => part.name === lid.name)
        .flatMap((part) =>
          part.holes
            .filter(({ what }) => words.has(what))
            .map((hole) => ({ part, hole, value: rimOf(part, hole), limit: RIM * part.thickness })),
        );
    });
  if (rims.length === 0) return [];
  const { part, hole, value, limit } = rims.reduce((a, b) => (b.value - b.limit < a.value - a.limit ? b : a));
  return [
    atLeast(design, {
      id: 'mount_room',
      title: 'metal round a lid’s bolts',
      value,
      limit,
      unit: 'mm',
      below: value < 0 ? 'fail' : 'warn',
      because: `${hole.what} in ${part.name}, to the next slot, tongue or edge (${RIM} thicknesses, common practice, no source)`,
      try: (short) => `Move it ${short.toFixed(1)} mm, or the slots and louvres away from it.`,
    }),
  ];
};

/** From a hole’s rim to the edge or to the box of an opening; a louvre’s box holds its tongue too. */
const rimOf = (part: Part, { at, diameter }: RoundHole): number => {
  const toBoxes = part.openings.map((opening) => {
    const { min, max } = pathBox(opening);
    const [dx, dy] = [0, 1].map((i) => Math.max(min[i]! - at[i]!, at[i]! - max[i]!)) as [number, number];
    return Math.max(dx, dy) <= 0 ? Math.max(dx, dy) : Math.hypot(Math.max(dx, 0), Math.max(dy, 0));
  });
  return Math.min(pathDistance(part.outline, at), ...toBoxes) - diameter / 2;
};

/** Depth down to which the side is whole at a tab: the floor, or a wing’s top where one opens there. */
const wallBelow = (design: Design, { side, x }: TabPlace, floor: number): number =>
  design.pan.wings
    .filter((w) => w.side === side && w.rear < x && x < w.front)
    .reduce((least, wing) => Math.min(least, topAt(wing, x)), floor);

const topAt = ({ rear, front, topDown }: Wing, x: number): number =>
  topDown.rear + ((topDown.front - topDown.rear) * (x - rear)) / (front - rear);
