import type { Design, SplitSeam } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { type Path, pathBox, polylinePath, regionPieces, subtractPath } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { nearestWord } from '../units/index.js';
import { edgePrep } from './edge-prep.js';
import { finishPart, within } from './finish.js';
import type { Part } from './part.js';
import { type Cut, type Piece, withJoins } from './split-join.js';
import { splitNeed } from './split-need.js';
import { isCut, type SplitPlace, seamAt, splitPlace } from './split-place.js';

/**
 * Parts cut apart: where the design asks for a seam, and where a part is too large for sheet or brake. Each
 * piece gives up half of the seam's root gap, so that the pieces joined are as long as the part.
 *
 * @throws PanError `shape-fold` for a seam of a part that is not there, off its blank, through a hole or along a bend
 */
export const splitParts = (design: Design, parts: readonly Part[]): readonly Part[] => {
  const { split } = design.pan.joints;
  const names = parts.map((part) => part.name);
  [...split.whole, ...split.seams.map((seam) => seam.part)].forEach((name) => {
    if (!names.some((known) => isNamed(known, name))) throw notThere(name, names);
  });
  return parts.flatMap((part) => {
    const asked = split.seams.filter((seam) => isNamed(part.name, seam.part));
    const alone = staysWhole(design, part);
    if (asked.length === 0 && (alone || splitNeed(design, part) === null)) return [part];
    return splitPart(design, part, asked, alone);
  });
};

/** Whether the design keeps a part from being cut apart by itself. */
export const staysWhole = ({ pan: { joints } }: Design, { name }: Pick<Part, 'name'>): boolean =>
  !joints.split.usual || joints.split.whole.some((kept) => isNamed(name, kept));

/** Places along an axis nearer than this are one, mm. */
const SAME = 1e-6;

const isNamed = (known: string, name: string): boolean => known.toLowerCase() === name.trim().toLowerCase();

const splitPart = (
  design: Design,
  part: Part,
  asked: readonly SplitSeam[],
  alone: boolean,
): readonly Part[] => {
  const gap = edgePrep('butt', part.thickness, part.material).gap ?? 0;
  const cuts: Cut[] = [];
  let pieces: readonly Piece[] = [{ part, shift: [0, 0] }];
  const cut = (piece: Piece, place: SplitPlace, axis: 0 | 1, why: Cut['why'], name: string | null): void => {
    const at = place.at + piece.shift[axis];
    // Two pieces cut at one place, as the halves of a wide part are, share one seam.
    if (!cuts.some((c) => c.axis === axis && Math.abs(c.at - at) < SAME))
      cuts.push({ axis, at, place, why, name, gap });
    pieces = pieces.flatMap((p) => (p === piece ? halves(p, axis, place.at, gap) : [p]));
  };
  for (const seam of asked) {
    const axis = seam.way === 'across' ? 0 : 1;
    for (const piece of pieces) {
      const at = seam.at - piece.shift[axis];
      if (at > 0 && at < piece.part.flat[axis])
        cut(piece, placeAsked(seam, piece, axis, at), axis, 'asked', seam.name);
    }
    if (!cuts.some((c) => c.axis === axis && c.at === seam.at)) throw offBlank(seam, part);
  }
  for (let i = 0; !alone && i < pieces.length; ) {
    const piece = pieces[i]!;
    const need = splitNeed(design, piece.part);
    const places = (need?.windows ?? []).flatMap(
      ([low, high]) => splitPlace(piece.part, need!.axis, low, high) ?? [],
    );
    const best = places.reduce<SplitPlace | null>(
      (a, b) => (a === null || (b.near?.away ?? Infinity) > (a.near?.away ?? Infinity) ? b : a),
      null,
    );
    if (need === null || best === null) i++;
    else cut(piece, best, need.axis, need.why, null);
  }
  return cuts.length === 0 ? [part] : withJoins(part, pieces, cuts);
};

const placeAsked = (seam: SplitSeam, { part }: Piece, axis: 0 | 1, at: number): SplitPlace => {
  const place = seamAt(part, axis, at);
  if (!isCut(place)) return place;
  throw new PanError({
    code: 'shape-fold',
    path: ['pan', 'joints', 'split'],
    message: `The seam asked for in "${seam.part}" at ${seam.at.toFixed(1)} mm runs through ${place.near?.what}, which reaches ${Math.abs(place.near?.away ?? 0).toFixed(1)} mm past it.`,
    value: seam.at,
    unit: 'mm',
    advice:
      'Move the seam onto a flat run, or leave its place out: a part too large for the sheet is cut by itself.',
  });
};

/** Both sides of a line square to an axis, each piece half a gap short of it. */
const halves = ({ part, shift }: Piece, axis: 0 | 1, at: number, gap: number): readonly Piece[] => {
  const region = { loops: [part.outline, ...part.openings] };
  const { min, max } = pathBox(part.outline);
  const beyond = 10 + Math.max(...part.flat);
  const side = (low: number, high: number): Path => {
    const point = (u: number, v: number): Vec2 => (axis === 0 ? [u, v] : [v, u]);
    const [v0, v1] = [min[1 - axis]! - beyond, max[1 - axis]! + beyond];
    return polylinePath([point(low, v0), point(high, v0), point(high, v1), point(low, v1)], true);
  };
  const cutters = [side(at - gap / 2, max[axis]! + beyond), side(min[axis]! - beyond, at + gap / 2)];
  return cutters.flatMap((cutter) =>
    regionPieces(subtractPath(region, cutter)).map(({ outline, openings }): Piece => {
      const box = pathBox(outline);
      const pilots = part.pilots?.filter(({ at: p }) =>
        p.every((v, k) => v > box.min[k]! && v < box.max[k]!),
      );
      const drawn = { ...part, outline, openings, ...within(part, outline, openings) };
      return {
        part: finishPart(pilots === undefined ? drawn : { ...drawn, pilots }),
        shift: [shift[0] + box.min[0], shift[1] + box.min[1]],
      };
    }),
  );
};

const notThere = (name: string, names: readonly string[]): PanError => {
  const near = nearestWord(name, names);
  return new PanError({
    code: 'shape-fold',
    path: ['pan', 'joints', 'split'],
    message: `This pan has no part called "${name}" that can be cut apart.`,
    expected: near ?? `one of: ${names.join(', ')}`,
    found: name,
    advice: near === null ? `Its parts are: ${names.join(', ')}.` : `Did you mean ${near}?`,
  });
};

const offBlank = (seam: SplitSeam, { flat }: Part): PanError => {
  const room = flat[seam.way === 'across' ? 0 : 1];
  return new PanError({
    code: 'shape-fold',
    path: ['pan', 'joints', 'split'],
    message: `The seam asked for in "${seam.part}" at ${seam.at.toFixed(1)} mm lies off its blank, which is ${room.toFixed(1)} mm ${seam.way === 'across' ? 'long' : 'wide'} as drawn.`,
    value: seam.at,
    limit: room,
    unit: 'mm',
    advice: `Write a distance between 0 and ${room.toFixed(0)} mm.`,
  });
};
