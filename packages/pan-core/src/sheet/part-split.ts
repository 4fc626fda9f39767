import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import {
  lineSegment,
  type Path,
  pathBox,
  polylinePath,
  type Region,
  segmentLength,
  subtractPath,
} from '../geometry/index.js';
import { finishRegion, onMaterial } from './finish.js';
import type { Part } from './part.js';
import { seamPlaces, seamWords, sheetRoom } from './seam-place.js';

/** How far a cutter reaches beyond the part, mm. */
const BEYOND = 10;
/** A piece says on its rim where the next one is welded to it: this far in from the edge, mm. */
const WORDS_IN = 6;

/** Parts that the sheet is too short for, or that the design says to split, in pieces; everything else as it is. */
export const splitParts = (design: Design, parts: readonly Part[]): readonly Part[] => {
  const { split } = design.pan.joints;
  refuseUnknown(split ?? [], parts);
  return parts.flatMap((part) => {
    const asked = (split ?? []).filter((one) => one.part === part.name).map((one) => one.along);
    const places = split === null ? seamPlaces(part, sheetRoom(design)) : asked.sort((a, b) => a - b);
    return places === null || places.length === 0 ? [part] : inPieces(part, places);
  });
};

const refuseUnknown = (
  split: NonNullable<Design['pan']['joints']['split']>,
  parts: readonly Part[],
): void => {
  split.forEach(({ part: name, along }, i) => {
    const part = parts.find((one) => one.name === name);
    const path = ['pan', 'joints', 'split', i];
    if (part === undefined) {
      throw new PanError({
        code: 'shape-fold',
        path: [...path, 'part'],
        message: `"${name}" is no part that can be split.`,
        advice: `Write one of: ${parts.map((one) => one.name).join(', ')}.`,
      });
    }
    const bend = part.folds.find((fold) => crosses(fold, along));
    const off = along <= 0 || along >= part.flat[0];
    if (!off && bend === undefined) return;
    throw new PanError({
      code: 'shape-fold',
      path: [...path, 'along'],
      message: off
        ? `${name} is ${part.flat[0].toFixed(1)} mm long when flat, and a seam at ${along.toFixed(1)} mm is not on it.`
        : `A seam at ${along.toFixed(1)} mm along ${name} lies in the ${bend?.name ?? ''} bend.`,
      value: along,
      limit: part.flat[0],
      unit: 'mm',
      advice: 'Measure along the flat part from its left end as it is drawn, and keep to a flat run.',
    });
  });
};

const crosses = ({ from, to, allowance }: Part['folds'][number], along: number): boolean =>
  along > Math.min(from[0], to[0]) - allowance / 2 && along < Math.max(from[0], to[0]) + allowance / 2;

const inPieces = (part: Part, places: readonly number[]): readonly Part[] => {
  const ends = [Number.NEGATIVE_INFINITY, ...places, Number.POSITIVE_INFINITY];
  const count = places.length + 1;
  const name = (k: number): string => `${part.name} piece ${k + 1}`;
  const whole: Region = { loops: [part.outline, ...part.openings] };
  return Array.from({ length: count }, (_, k) => {
    const [low, high] = [ends[k]!, ends[k + 1]!];
    const seams = [
      ...(k === 0 ? [] : [{ other: name(k - 1), at: low, inward: 1, end: 'left' as const }]),
      ...(k === count - 1 ? [] : [{ other: name(k + 1), at: high, inward: -1, end: 'right' as const }]),
    ].map((seam) => ({
      ...seam,
      runs: across(part, seam.at),
      words: across(part, seam.at + seam.inward * WORDS_IN),
    }));
    const { outline: _o, openings: _p, flat: _f, area: _a, cutLength: _c, mass: _m, ...draft } = part;
    const pieces = finishRegion(
      {
        ...draft,
        name: name(k),
        what: `Piece ${k + 1} of ${count}. ${part.what}`,
        marks: [
          ...part.marks,
          ...seams.flatMap(({ other, words }) =>
            words.slice(0, 1).map((piece) => ({ path: [piece], what: seamWords(other) })),
          ),
        ],
        notes: [
          ...part.notes,
          `Piece ${k + 1} of ${count}, counted from the left end of the whole, which other notes speak of: butt-welded flat to ${seams.map((s) => s.other).join(' and ')}, dressed flush, and only then folded.`,
        ],
      },
      within(whole, low, high),
    );
    const own = seams.map(({ other, end, runs }) => ({
      other,
      end,
      length: runs.reduce((sum, piece) => sum + segmentLength(piece), 0),
    }));
    return pieces.map((piece, i) => (i === 0 ? { ...piece, seams: own } : piece));
  }).flat();
};

/** The stretches of material that a line across the part runs over. */
const across = ({ outline, openings }: Part, at: number): Path => {
  const { min, max } = pathBox(outline);
  return onMaterial(lineSegment([at, min[1] - BEYOND], [at, max[1] + BEYOND]), [outline, ...openings]);
};

const within = (whole: Region, low: number, high: number): Region => {
  const { min, max } = pathBox(whole.loops[0]!);
  const [bottom, top] = [min[1] - BEYOND, max[1] + BEYOND];
  const cut = (region: Region, from: number, to: number): Region =>
    from >= to
      ? region
      : subtractPath(
          region,
          polylinePath(
            [
              [from, bottom],
              [to, bottom],
              [to, top],
              [from, top],
            ],
            true,
          ),
        );
  const left = Number.isFinite(low) ? cut(whole, min[0] - BEYOND, low) : whole;
  return Number.isFinite(high) ? cut(left, high, max[0] + BEYOND) : left;
};
