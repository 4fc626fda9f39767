import type { DistanceSurvey, MarkSurvey, RailSurvey } from '../design/index.js';
import type { Check } from './report.js';
import { judge } from './row.js';

/** Two placed holes may be this far off the distances between them, mm: a tape from a casting's edge. */
const PLACED_OFF = 2;

/** Whether the rail's own measurements go together, and whether it is mirrored. */
export const railChecks = (rail: RailSurvey | null | undefined): readonly Check[] => [
  ...(rail?.distances == null ? [] : distanceChecks(rail.distances)),
  ...(rail?.marks == null ? [] : [sideCheck(rail.marks)]),
];

const distanceChecks = (survey: DistanceSurvey): readonly Check[] => {
  const { distances, slips, holes, critical, plusMinus, placedOff } = survey;
  const largest = distances.reduce((a, b) => (Math.abs(b.standardized) > Math.abs(a.standardized) ? b : a));
  const [slip] = slips;
  const shown = slip ?? { holes: largest.holes, by: largest.residual };
  const off = Math.max(...holes.map((hole) => hole.plusMinus));
  const [a, b] = shown.holes;
  return [
    judge({
      id: 'rail_distances',
      group: 'fit',
      title: 'hole distances',
      unit: 'mm',
      value: Math.abs(shown.by),
      limit: critical * plusMinus * Math.sqrt(slip === undefined ? Math.max(largest.redundancy, 0.05) : 1),
      wants: 'at most',
      miss: 'fail',
      because:
        slip === undefined
          ? `${distances.length} distances place ${holes.length} holes within ${off.toFixed(2)} mm; the worst, ${a} to ${b}, is ${signed(shown.by)} mm off.`
          : `Hole ${a} to ${b} reads ${Math.abs(slip.by).toFixed(1)} mm too ${slip.by > 0 ? 'long' : 'short'} beside ${distances.length - 1} other distances.`,
      fix: `Measure ${slips.map(({ holes: [p, q] }) => `${p} to ${q}`).join(', ')} again.`,
    }),
    judge({
      id: 'rail_placed',
      group: 'fit',
      title: 'placed holes',
      unit: 'mm',
      value: Math.abs(placedOff),
      limit: Math.max(PLACED_OFF, 3 * plusMinus),
      wants: 'at most',
      miss: 'warn',
      because: `The two placed holes are ${signed(placedOff)} mm farther apart by the distances than by their places.`,
      fix: 'Measure their x and y again; the first one places the whole rail.',
    }),
  ];
};

const signed = (value: number): string => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(2)}`;

/** How far a mark may be off before it speaks, mm. */
const MARK_OFF = 10;

const sideCheck = ({ marks, says }: MarkSurvey): Check => {
  const worst = marks.reduce((a, b) => (b.off > a.off ? b : a));
  const row = {
    id: 'rail_side',
    group: 'fit',
    title: 'rail not mirrored',
    value: worst.off,
    limit: MARK_OFF,
    unit: 'mm',
    margin: (MARK_OFF - worst.off) / MARK_OFF,
  } as const;
  const words = `${worst.name} is drawn ${worst.off.toFixed(0)} mm from where it is on the engine`;
  switch (says) {
    case 'agrees':
      return {
        ...row,
        status: 'pass',
        because: `${words} at most; turned over it would be ${worst.offTurned.toFixed(0)} mm.`,
        try: '',
      };
    case 'mirrored':
      return {
        ...row,
        status: 'fail',
        because: `The rail is mirrored: ${words}, and ${worst.offTurned.toFixed(0)} mm when turned over.`,
        try: 'Set engine.rail.seen_from to the other side.',
      };
    case 'neither':
      return {
        ...row,
        status: 'fail',
        because: `${words}, and ${worst.offTurned.toFixed(0)} mm when turned over: neither way fits.`,
        try: 'Measure the mark again, and check origin, forward and the drawing’s unit.',
      };
    case 'cannot tell':
      return {
        ...row,
        status: 'warn',
        because: 'Every mark lies so near the centre line that it fits a mirrored rail as well.',
        try: 'Add a mark to one side, such as the pump’s port or a dowel.',
      };
  }
};
