import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import { type PanModel, platesOf } from '../pan/index.js';
import { asksForTrees, type Part } from '../sheet/index.js';
import { filletLeg } from './fillet.js';
import { flangeSeams, plateSeams } from './flange-seams.js';
import { footSeams } from './foot-seams.js';
import { pieceSeams } from './piece-seams.js';
import { contactLines } from './plate-contact.js';
import { ringLine, type Seat, seatNear, seatUnder } from './ring-seat.js';
import type { Seam } from './seam.js';
import { linesOfEdges, rootLength, type SeamLine } from './seam-line.js';
import { panSkin, type Skin } from './skin.js';
import { skinMovedOut } from './skin-offset.js';
import { FLANGE_KEY, type SkinParts, skinParts } from './skin-part.js';
import { type Meeting, type SkinEdge, skinMeetings } from './skin-seams.js';
import { treeSkinParts } from './tree-skin.js';
import { type BareSeam, prepared } from './weld-prep.js';

/**
 * Every seam of the pan as the design folds it, in the order it is laid.
 *
 * @param cut the parts, for the seams of those that are cut apart
 */
export const panSeams = (
  model: PanModel,
  skin: Skin = panSkin(model),
  cut: readonly Part[] = [],
): readonly Seam[] => {
  const { design } = model;
  const parts = asksForTrees(design) ? treeSkinParts(model, skin) : skinParts(model, skin);
  const meetings = skinMeetings(skin, parts.keyOf).filter((m) => !parts.folded(m.first, m.second));
  const atFlange = (m: Meeting): boolean => m.first === FLANGE_KEY || m.second === FLANGE_KEY;
  const shell = meetings.filter((m) => !atFlange(m));
  const rim = meetings.filter(atFlange);
  const outside = skinMovedOut(skin, design.pan.sheet.thickness);
  const all = [
    ...plateSeams(model),
    ...pieceSeams(design, cut),
    ...baffleSeams(model, skin),
    ...footSeams(model),
    ...shell
      .map((meeting) =>
        shellSeam(meeting, parts, design, (edges) => linesOfEdges(edges, skin.points, outside)),
      )
      .sort((a, b) => (a.name < b.name ? -1 : 1)),
    ...bossSeams(design, skin),
    ...flangeSeams(rim, skin, design),
  ];
  return freeze(all.map((seam, i) => prepared(design, seam, i + 1)));
};

/** At an inward corner one plate stops short and butts on the other's outside, so the seam is a fillet. */
const JOINTS: Readonly<Record<Meeting['corner'], Seam['joint']>> = {
  outward: 'open corner',
  inward: 'fillet',
  flat: 'butt',
};

const shellSeam = (
  { first, second, corner, length, edges }: Meeting,
  { nameOf, partOf }: SkinParts,
  design: Design,
  linesOf: (edges: readonly SkinEdge[]) => readonly SeamLine[],
): BareSeam => {
  return {
    name: `${nameOf(first)} to ${nameOf(second)}`,
    between: [partOf(first), partOf(second)],
    joint: JOINTS[corner],
    side: 'outside',
    run: 'continuous',
    length,
    lines: linesOf(edges),
    size: design.pan.sheet.thickness,
    step: 'shell',
    closedBy: null,
  };
};

const baffleSeams = (model: PanModel, skin: Skin): readonly BareSeam[] => {
  const { design } = model;
  const lids = design.baffles.filter((b) => b.kind === 'lid' && b.fixed === 'welded');
  return platesOf(model).flatMap((plate): BareSeam[] => {
    const { baffle } = plate;
    if (baffle.fixed !== 'welded') return [];
    const over = baffle.kind === 'wall' ? lids.map((lid) => lid.name) : [];
    const lines = contactLines(plate, skin);
    return [
      {
        name: `${baffle.name} to the pan`,
        between: [baffle.name, 'belly and sides'],
        joint: 'tee',
        side: 'inside',
        run: 'stitch',
        length: rootLength(lines),
        lines,
        size: filletLeg(baffle.thickness, design.pan.sheet.thickness),
        step: 'inside',
        closedBy: over.length > 0 ? over.join(' and ') : null,
      },
    ];
  });
};

const bossSeams = (design: Design, skin: Skin): readonly BareSeam[] => {
  const { thickness } = design.pan.sheet;
  const ring = (name: string, diameter: number, seat: Seat | null): BareSeam => ({
    name: `${name} to the pan`,
    between: [name, 'pan'],
    joint: 'ring',
    side: 'outside',
    run: 'continuous',
    length: Math.PI * diameter,
    lines: seat === null ? [] : [ringLine(seat, diameter / 2, thickness)],
    size: thickness,
    step: 'bosses',
    closedBy: null,
  });
  const { drain } = design;
  return [
    ...(drain === null ? [] : [ring('drain bung', drain.bung, seatUnder(skin, drain.at))]),
    ...design.bungs.map((bung) =>
      ring(`bung "${bung.name}"`, bung.diameter, seatNear(skin, bung.at, thickness)),
    ),
  ];
};
