import type { Design } from '../design/index.js';
import { atLeast, type SheetFinding } from './finding.js';
import type { Part, PartJoin } from './part.js';
import { joinsOnce } from './split-join.js';
import { seamClearance } from './split-place.js';

/** How far the seams of parts that were cut apart keep from bends, holes, corners and feet of baffles. */
export const splitFindings = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const joins = joinsOnce(parts);
  if (joins.length === 0) return [];
  const away = ({ join }: (typeof joins)[number]): number => join.near?.away ?? Number.POSITIVE_INFINITY;
  const worst = joins.reduce((a, b) => (away(b) < away(a) ? b : a));
  const wish = seamClearance(worst.part.thickness);
  const seams = [...new Set(joins.map(({ join }) => join.seam))];
  const { join } = worst;
  return [
    atLeast(design, {
      id: 'seam_clear',
      title: 'seams of parts cut apart clear of bends and holes',
      value: Math.min(away(worst), 10 * wish),
      limit: wish,
      unit: 'mm',
      below: 'warn',
      because: `${seams.length === 1 ? 'one seam' : `${seams.length} seams, the nearest`}: ${seamWords(join)}${join.near === null ? '' : `, beside ${join.near.what}`}`,
      try: (short) =>
        `Move "${join.seam}" ${short.toFixed(0)} mm away from ${join.near?.what ?? 'it'} (pan.joints.split), or buy a sheet that holds ${join.whole} whole.`,
    }),
  ];
};

const WHY: Readonly<Record<PartJoin['why'], string>> = {
  sheet: 'too large for the sheet',
  brake: 'folds longer than the brake',
  asked: 'as asked for',
};

const seamWords = ({ seam, whole, at, side, why, places }: PartJoin): string => {
  const from = side === 'left' || side === 'right' ? 'left' : 'lower';
  const x = places[0]?.[0];
  const inPan = x === undefined || places.some((p) => Math.abs(p[0] - x) > 0.5) ? '' : ` (x ${x.toFixed(0)})`;
  return `"${seam}" across ${whole}, ${at.toFixed(0)} mm from its blank’s ${from} edge${inPan}, ${WHY[why]}`;
};
