import type { Design } from '../design/index.js';
import { distance2, pathDistance, pointInPath } from '../geometry/index.js';
import type { Panel } from '../pan/index.js';
import { THE_DRAIN } from './belly-hole.js';
import { atLeast, atMost, type SheetFinding } from './finding.js';
import { holeToBend } from './fold-reach.js';
import { nearestSheet, stepWords } from './nearest-sheet.js';
import type { Part, RoundHole } from './part.js';

/** Flat sheet left between a bung and the next edge, bend or baffle, mm: room for a seam all round and the torch. */
const ROOM = 10;
/** How far from square a round hole still takes a round bung, deg; both common practice, no source. */
const ASKEW = 5;
/** Beyond this no bung can be welded in, radians. */
const MOST_LEAN = Math.PI / 3;

/** Whether every bung has a hole, on flat sheet, with room for its seam, and stands square to it. */
export const bungFindings = (
  design: Design,
  parts: readonly Part[],
  panels: readonly Panel[],
): readonly SheetFinding[] => {
  const wanted = [...(design.drain === null ? [] : [THE_DRAIN]), ...design.bungs.map(({ name }) => name)];
  if (wanted.length === 0) return [];
  const cut = parts.flatMap((part) =>
    part.holes.flatMap((hole) => (hole.bung === undefined ? [] : [{ part, hole, bung: hole.bung }])),
  );
  return [seats(design, panels, wanted, cut), ...room(design, cut), ...square(design, cut)];
};

interface CutHole {
  readonly part: Part;
  readonly hole: RoundHole;
  readonly bung: string;
}

const seats = (
  design: Design,
  panels: readonly Panel[],
  wanted: readonly string[],
  cut: readonly CutHole[],
): SheetFinding => {
  const holesOf = (name: string): readonly CutHole[] => cut.filter(({ bung }) => bung === name);
  const wrong = wanted.filter((name) => holesOf(name).length !== 1);
  const first = wrong[0];
  const parts = first === undefined ? [] : holesOf(first).map(({ part }) => part.name);
  const place = design.bungs.find(({ name }) => name === first)?.at;
  const off = place === undefined || parts.length > 0 ? null : nearestSheet(panels, place);
  return {
    id: 'bung_seat',
    title: 'bungs that miss the sheet',
    status: first === undefined ? 'pass' : 'fail',
    value: wrong.length,
    limit: 0,
    unit: '1',
    because:
      first === undefined
        ? 'each has one hole in one part'
        : parts.length === 0
          ? `"${first}" lies on no part that takes one, so that no hole is cut for it${off === null ? '' : `: ${off.distance.toFixed(1)} mm off the inside face of the ${ownerWords(design, off.panel)}`}`
          : `"${first}" sits astride ${parts.join(' and ')}`,
    try:
      first === undefined
        ? ''
        : off === null || off.distance < NEAR
          ? 'Put its place on the inside face of belly, side, wing or notch, away from their edges.'
          : `Move its place ${stepWords(off.way)}, onto the inside face, and on from its edge.`,
  };
};

/** Nearer than this a bung is on the sheet and only its edge is in the way, mm. */
const NEAR = 0.05;

const ownerWords = ({ pan }: Design, { owner, index }: Panel): string => {
  if (owner === 'wing') return pan.wings[index]?.name ?? 'wing';
  if (owner === 'notch') return `notch "${pan.notches[index]?.name ?? ''}"`;
  return owner === 'side left' ? 'left side' : owner === 'side right' ? 'right side' : owner;
};

/** From a bung's rim to what its seam must keep off, mm; negative when it reaches over it. */
const roomsOf = (
  design: Design,
  { part, hole, bung }: CutHole,
): readonly { readonly value: number; readonly what: string }[] => {
  const radius = hole.diameter / 2;
  const inside = (loop: Part['outline']): boolean => pointInPath(loop, hole.at) === 'inside';
  const edge = (loop: Part['outline'], within: boolean): number =>
    (inside(loop) === within ? 1 : -1) * pathDistance(loop, hole.at) - radius;
  return [
    { value: edge(part.outline, true), what: 'the part’s edge' },
    ...part.openings.map((loop) => ({ value: edge(loop, false), what: 'an opening’s edge' })),
    ...part.holes
      .filter((other) => other !== hole)
      .map((other) => ({
        value: distance2(other.at, hole.at) - other.diameter / 2 - radius,
        what: other.what,
      })),
    ...part.folds.map((fold) => ({
      value: holeToBend(fold, hole.at, hole.diameter),
      what: `the ${fold.name} bend`,
    })),
    ...part.marks
      .filter(({ what }) => design.baffles.some(({ name }) => what.startsWith(`${name}, `)))
      .map(({ path, what }) => ({ value: pathDistance(path, hole.at) - radius, what })),
  ].map(({ value, what }) => ({ value, what: `${bung} bung to ${what}, in ${part.name}` }));
};

const room = (design: Design, cut: readonly CutHole[]): readonly SheetFinding[] => {
  const all = cut.flatMap((one) => roomsOf(design, one));
  if (all.length === 0) return [];
  const worst = all.reduce((a, b) => (b.value < a.value ? b : a));
  return [
    atLeast(design, {
      id: 'bung_room',
      title: 'flat sheet round a bung',
      value: worst.value,
      limit: ROOM,
      unit: 'mm',
      below: worst.value < 0 ? 'fail' : 'warn',
      because: `${worst.what}: room for a seam all round (common practice, no source)`,
      try: (short) => `Move it ${short.toFixed(1)} mm away.`,
    }),
  ];
};

const square = (design: Design, cut: readonly CutHole[]): readonly SheetFinding[] => {
  const leaning = cut.flatMap(({ hole: { tilt, diameter }, bung }) =>
    tilt === undefined ? [] : [{ tilt, diameter, bung }],
  );
  if (leaning.length === 0) return [];
  const { tilt, diameter, bung } = leaning.reduce((a, b) => (b.tilt > a.tilt ? b : a));
  return [
    atMost(design, {
      id: 'bung_square',
      title: 'bung square to the sheet',
      value: (tilt * 180) / Math.PI,
      limit: ASKEW,
      unit: 'deg',
      below: 'warn',
      because: `${bung}: its hole is cut round, ${diameter.toFixed(1)} mm; a bung that leans needs it longer (common practice, no source)`,
      try: () =>
        tilt > MOST_LEAN
          ? 'Its axis runs along the sheet: put toward outside the pan.'
          : `File it ${(diameter / Math.cos(tilt)).toFixed(1)} mm long, or turn the axis square.`,
    }),
  ];
};
