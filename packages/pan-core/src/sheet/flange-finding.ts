import type { Design } from '../design/index.js';
import {
  distance2,
  nearestOnSegment,
  type Path,
  pathDistance,
  pathGap,
  pathLength,
  pointInPath,
  segmentLength,
} from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Profile } from '../pan/index.js';
import { inEndSeal } from './end-seal.js';
import { endSealFindings } from './end-seal-finding.js';
import { atLeast, atMost, type SheetFinding } from './finding.js';
import { flangeDetailFindings } from './flange-detail.js';
import { type FlangeHole, flangeHoles } from './flange-hole.js';
import { flangePieces } from './flange-piece.js';
import { flangeRim } from './flange-scallop.js';
import { flangeOpening, flangeOutline } from './flange-shape.js';
import { stiffnessFindings } from './flange-stiffness.js';

/** EN 1993-1-8, table 3.3: least distance of a hole's centre from an edge, in hole diameters. */
const EDGE_IN_HOLES = 1.2;
/** Sealing land inside the holes, mm: common practice, no source. */
const LAND = 5;
/** Bolt pitch in thread diameters: common practice, no source. */
const PITCH_IN_THREADS = 8;
/** Metal left between the flange's opening and its edge where no hole stands, in plate thicknesses: common practice, no source. */
const RIM = 1;

/** The flange's own questions: edge distance, land, pitch, and metal left round the opening. */
export const flangeFindings = (design: Design, profile: Profile): readonly SheetFinding[] => {
  const outline = flangeRim(design, profile);
  const opening = flangeOpening(design, profile);
  const rim = atLeast(design, {
    id: 'flange_rim',
    title: 'metal round the flange’s opening',
    value: outside(outline, opening) ? -pathGap(outline, opening) : pathGap(outline, opening),
    limit: RIM * design.pan.flange.thickness,
    unit: 'mm',
    below: 'fail',
    because: 'the pan passes through the flange, and what is left outside it must carry the bolts',
    try: (short) =>
      `Narrow the pan at the rail, or let the flange stand ${short.toFixed(1)} mm further beyond the rail.`,
  });
  const holes = flangeHoles(design);
  const bolts = holes.filter(({ kind }) => kind === 'bolt');
  const details = [...flangeDetailFindings(design, profile), ...endSealFindings(design, profile)];
  if (bolts.length === 0) {
    const unknown: SheetFinding = {
      id: 'rail_holes',
      title: 'flange holes',
      status: 'warn',
      value: null,
      limit: null,
      unit: 'mm',
      because: 'no rail holes are given, so the flange is cut as a blank',
      try: 'Transfer holes from the block, or measure them into engine.rail_holes.',
    };
    return [rim, unknown, ...details];
  }
  const at = ([x, y]: Vec2): string => `x ${x.toFixed(0)}, y ${y.toFixed(0)} mm`;
  const rail = flangeOutline(design);
  const plates = flangePieces(design, profile).map((piece) => piece.outline);
  const edges = holes.map((h) => ({
    h,
    value: inMetal(plates, h.at) / h.diameter,
    whole: signedDistance(rail, h.at),
  }));
  const edge = edges.reduce((a, b) => (b.value < a.value ? b : a));
  const lands = holes.map((h) => ({ h, value: -signedDistance(opening, h.at) - h.diameter / 2 }));
  const land = lands.reduce((a, b) => (b.value < a.value ? b : a));
  const pitch = widestPitch(design, outline, bolts);
  return [
    rim,
    atLeast(design, {
      id: 'hole_edge',
      title: 'flange hole to edge',
      value: edge.value * edge.h.diameter,
      limit: EDGE_IN_HOLES * edge.h.diameter,
      unit: 'mm',
      below: 'fail',
      because: `the hole at ${at(edge.h.at)} needs 1.2 of its ${edge.h.diameter} mm to the flange’s edge (EN 1993-1-8)`,
      try: (short) =>
        edge.whole < EDGE_IN_HOLES * edge.h.diameter
          ? `Let the flange stand ${short.toFixed(1)} mm further beyond the rail, or check that hole.`
          : `Keep the relief, joint or end plate ${short.toFixed(1)} mm further from that hole.`,
    }),
    atLeast(design, {
      id: 'sealing_land',
      title: 'sealing land inside the bolts',
      value: land.value,
      limit: LAND,
      unit: 'mm',
      below: 'fail',
      because: `at ${at(land.h.at)} this much flange is left between bolt hole and opening`,
      try: (short) => `Make the pan ${short.toFixed(1)} mm narrower there at the rail.`,
    }),
    ...(pitch === null
      ? []
      : [
          atMost(design, {
            id: 'bolt_pitch',
            title: 'widest bolt pitch',
            value: pitch.value,
            limit: PITCH_IN_THREADS * pitch.thread,
            unit: 'mm',
            below: 'warn',
            because: `between ${at(pitch.from)} and ${at(pitch.to)} the flange alone must keep the joint tight`,
            try: () =>
              'Use a thicker flange and a sealant for wide joints; the block’s holes are where they are.',
          }),
          ...stiffnessFindings(design, {
            ...pitch,
            where: `between ${at(pitch.from)} and ${at(pitch.to)}`,
          }),
        ]),
    ...details,
  ];
};

/** Whether any of an opening lies outside the outline. */
const outside = (outline: Path, opening: Path): boolean =>
  opening.some((s) => pointInPath(outline, s.from) === 'outside');

const signedDistance = (loop: Path, p: Vec2): number =>
  pointInPath(loop, p) === 'outside' ? -pathDistance(loop, p) : pathDistance(loop, p);

/** Distance of a place from the edge of the plate it lies on, negative when it lies on none. */
const inMetal = (plates: readonly Path[], p: Vec2): number =>
  Math.max(...plates.map((plate) => signedDistance(plate, p)));

/** The largest straight distance between bolts that follow each other round the outline. */
const widestPitch = (
  design: Design,
  outline: Path,
  holes: readonly FlangeHole[],
): { readonly value: number; readonly from: Vec2; readonly to: Vec2; readonly thread: number } | null => {
  if (holes.length < 2 || pathLength(outline) === 0) return null;
  const ordered = holes
    .map((h) => ({ ...h, place: placeRound(outline, h.at) }))
    .sort((a, b) => a.place - b.place);
  const gaps = ordered.flatMap((h, i) => {
    const next = ordered[(i + 1) % ordered.length]!;
    // An end plate between two bolts is closed by its own seal.
    if (inEndSeal(design, [(h.at[0] + next.at[0]) / 2, (h.at[1] + next.at[1]) / 2])) return [];
    const thread = Math.min(h.size, next.size);
    return [{ value: distance2(h.at, next.at), from: h.at, to: next.at, thread }];
  });
  if (gaps.length === 0) return null;
  return gaps.reduce((a, b) => (b.value / b.thread > a.value / a.thread ? b : a));
};

/** Length along the outline to the place nearest a point. */
const placeRound = (outline: Path, p: Vec2): number => {
  let [best, place, walked] = [Number.POSITIVE_INFINITY, 0, 0];
  for (const s of outline) {
    const near = nearestOnSegment(s, p);
    const away = distance2(near, p);
    if (away < best) [best, place] = [away, walked + distance2(s.from, near)];
    walked += segmentLength(s);
  }
  return place;
};
