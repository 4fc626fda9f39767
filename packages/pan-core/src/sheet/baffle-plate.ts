import type { Baffle, Design } from '../design/index.js';
import {
  clockwise,
  insetEdges,
  isClosed,
  type Path,
  pointInPath,
  polylinePath,
  rectangle,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import { planeFacet } from './cutter.js';
import { doorHeads } from './door-head.js';
import { doorParts } from './door-part.js';
import practice from './door-practice.json' with { type: 'json' };
import { finishPart, marksWithin } from './finish.js';
import { hingeMarks, lidCut } from './lid-cut.js';
import { mountHoles, tabParts } from './lid-tab.js';
import type { Mark, Part, RoundHole } from './part.js';

/** Fit gap of a baffle to the pan, each side, mm: common practice, no source. */
export const BAFFLE_GAP = practice.baffle_gap_mm;

/** Lids and walls with their doors' flaps, hinge strips and stops. */
export const baffleParts = (design: Design, plates: readonly Plate[]): readonly Part[] =>
  plates.flatMap((plate) => [
    ...platePieces(design, plate),
    ...doorParts(design, plate),
    ...(plate.baffle.kind === 'lid' ? tabParts(design, plate.baffle) : []),
  ]);

const platePieces = (design: Design, plate: Plate): readonly Part[] =>
  plate.outlines.map((points, i) => {
    const { baffle } = plate;
    const mounts = baffle.kind === 'lid' ? mountHoles(design, baffle) : [];
    const inset = insetEdges(
      points,
      points.map(() => BAFFLE_GAP),
    );
    const outline = polylinePath(inset ?? points, true);
    const own = plate.openings.filter((o) => pointInPath(outline, middle(o.outline)) === 'inside');
    return finishPart({
      name: plate.outlines.length === 1 ? baffle.name : `${baffle.name} ${i + 1}`,
      what: whatOf(baffle),
      quantity: 1,
      material: design.pan.sheet.material,
      thickness: baffle.thickness,
      drawnFace: 'either',
      outline,
      openings: own
        .filter((o) => o.diameter === null)
        .map((o): Path => clockwise(o.cut === undefined ? polylinePath(o.outline, true) : lidCut(o.cut))),
      holes: [
        ...own.flatMap((o): readonly RoundHole[] =>
          o.diameter === null ? [] : [{ at: middle(o.outline), diameter: o.diameter, what: 'oil hole' }],
        ),
        ...mounts.filter(({ at }) => pointInPath(outline, at) === 'inside'),
      ],
      folds: [],
      faces: [planeFacet(plate.origin, plate.u, plate.v)],
      marks: [
        ...hingeMarks(own.flatMap((o) => (o.cut === undefined ? [] : [o.cut]))),
        ...stopMarks(plate, outline),
      ],
      notes: [
        seenFrom(baffle),
        inset === null || !isClosed(outline)
          ? 'Cut to the pan’s inside with no fit gap; ease the edges to fit.'
          : `Smaller than the pan’s inside by ${BAFFLE_GAP} mm on every side, for fitting.`,
        ...(baffle.kind === 'wall' && baffle.weep > 0
          ? [`Its foot stands ${baffle.weep} mm clear of the floor, and the fit gap more: the weep.`]
          : []),
        ...fixingWords(baffle, mounts.length),
      ],
    });
  });

/** Where the foot of each door's stop is welded. */
const stopMarks = (plate: Plate, outline: Path): readonly Mark[] =>
  doorHeads(plate).flatMap(({ foot }): readonly Mark[] => {
    if (foot === null) return [];
    const points = rectangle(foot.across[0], foot.across[1], foot.up[0], foot.up[1]);
    const path = polylinePath(points, true);
    return marksWithin([{ path, what: 'door stop' }], [outline]);
  });

const whatOf = (baffle: Baffle): string => {
  if (baffle.kind === 'wall') return `Wall: an upright baffle ${baffle.run}.`;
  return baffle.tray === true ? 'Windage tray: keeps oil off the crank.' : 'Lid: a level baffle.';
};

const fixingWords = (baffle: Baffle, mounts: number): readonly string[] => {
  if (baffle.fixed === 'welded')
    return ['Welded: no loose edge; stitch both ends and check that nothing can come adrift.'];
  if (mounts === 0) return ['Bolted: weld tabs to the pan, drill through both on fitting, lock every bolt.'];
  const louvred = baffle.kind === 'lid' && baffle.louvres !== undefined;
  return [
    `Bolted at ${mounts} places; lock every bolt, and open a hole to fit rather than spring the plate.`,
    ...(louvred
      ? [
          'Bend the tongues down over a bar, all alike, and look along each hinge for cracks; no tongue reaches up to the rods.',
        ]
      : []),
  ];
};

const seenFrom = (baffle: Baffle): string => {
  if (baffle.kind === 'lid') return 'Seen from above, front of the car at the right; thickness upward.';
  return baffle.run === 'across'
    ? 'Seen from ahead, left of the car at the right; thickness forward.'
    : 'Seen from the right, front of the car at the right; thickness to the left.';
};

/** Mean of a polygon's points: the middle of a rectangle or of a round hole's polygon. */
const middle = (points: readonly Vec2[]): Vec2 => {
  const sum = points.reduce<Vec2>((s, p) => [s[0] + p[0], s[1] + p[1]], [0, 0]);
  return [sum[0] / points.length, sum[1] / points.length];
};
