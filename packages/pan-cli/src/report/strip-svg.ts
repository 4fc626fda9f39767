import type { DipstickReport, StickRow } from 'pan-core';
import { plain } from '../terminal/plain.js';
import { wrap } from '../terminal/wrap.js';
import { drawingMm, element, line, words } from './svg.js';

const WIDTH = 112;
const LEFT = 16;
const STICK = 8;
const TOP = 34;
const FOOT = 34;
/** A strip longer than this shows only the lower end of the stick, so that it fits one sheet. */
const LONGEST = 200;
const CHECK = 100;
/** Labels closer than this run into each other. */
const LABEL_GAP = 3.4;
const INK = { stroke: '#000000', 'stroke-width': 0.2 } as const;
const BOLD = { stroke: '#000000', 'stroke-width': 0.5 } as const;

/** The dipstick’s marks at full size, to print and lay beside the stick; user units are millimetres. */
export const stripSvg = (report: DipstickReport): string => {
  const end = report.end_mm;
  const from = end > LONGEST ? Math.ceil((end - LONGEST) / 10) * 10 : 0;
  const shown = end - from;
  const y = (along: number): number => TOP + along - from;
  const height = TOP + Math.max(shown, CHECK) + FOOT;
  return drawingMm(WIDTH, height, `Dipstick strip: ${plain(report.title, 80)}`, [
    ...heading(report, from),
    element('rect', { x: LEFT, y: TOP, width: STICK, height: shown, fill: 'none', ...INK }),
    ...ruler(from, end, y),
    ...volumes(report, from, y),
    ...mark('FULL', report.full, y),
    ...mark('ADD', report.add, y),
    words([LEFT + STICK / 2, y(end) + 4], 'end', { 'text-anchor': 'middle' }),
    ...checkLine(),
    ...foot(report, TOP + Math.max(shown, CHECK) + 12),
  ]);
};

const heading = (report: DipstickReport, from: number): readonly string[] => [
  ...wrap(plain(report.title, 90), 46).map((text, i) =>
    words([4, 7 + 4.4 * i], text, { 'font-size': 4, 'font-weight': 'bold' }),
  ),
  words([4, 19], 'Dipstick, full size: print at 100 %, no scaling.'),
  words([4, 23], 'Numbers on the left: mm along the stick from where its tube enters.'),
  words(
    [4, 27],
    from === 0 ? 'The top edge is where the tube enters.' : `The top edge is ${from} mm down the stick.`,
  ),
];

const ruler = (from: number, end: number, y: (along: number) => number): readonly string[] => {
  const ticks: string[] = [];
  for (let at = Math.ceil(from / 5) * 5; at <= end; at += 5) {
    const long = at % 10 === 0;
    ticks.push(line([LEFT - (long ? 3 : 1.5), y(at)], [LEFT, y(at)], INK));
    if (long) ticks.push(words([LEFT - 4, y(at) + 1], `${at}`, { 'text-anchor': 'end' }));
  }
  return ticks;
};

/** Volumes from the top down; what would run into its neighbour or a mark goes without a label. */
const volumes = (report: DipstickReport, from: number, y: (along: number) => number): readonly string[] => {
  const taken = [report.full.along_mm, report.add.along_mm];
  return [...report.table]
    .filter((row) => row.along_mm >= from)
    .sort((a, b) => Number(b.in_pan_L % 1 === 0) - Number(a.in_pan_L % 1 === 0))
    .flatMap((row) => {
      const at = y(row.along_mm);
      const tick = line([LEFT + STICK, at], [LEFT + STICK + 2, at], INK);
      if (taken.some((other) => Math.abs(other - row.along_mm) < LABEL_GAP)) return [tick];
      taken.push(row.along_mm);
      return [tick, words([LEFT + STICK + 3, at + 1], volumeText(row))];
    });
};

const volumeText = ({ in_pan_L, in_pan_US_qt }: StickRow): string =>
  `${in_pan_L.toFixed(2)} L = ${in_pan_US_qt.toFixed(2)} US qt`;

const mark = (name: string, row: StickRow, y: (along: number) => number): readonly string[] => {
  const at = y(row.along_mm);
  return [
    line([LEFT, at], [LEFT + STICK + 2, at], BOLD),
    words([LEFT + STICK + 3, at + 1.1], `${name}: ${volumeText(row)}, ${row.along_mm.toFixed(1)} mm`, {
      'font-weight': 'bold',
    }),
  ];
};

const checkLine = (): readonly string[] => {
  const x = WIDTH - 5;
  return [
    line([x, TOP], [x, TOP + CHECK], BOLD),
    line([x - 2, TOP], [x + 2, TOP], BOLD),
    line([x - 2, TOP + CHECK], [x + 2, TOP + CHECK], BOLD),
    element(
      'text',
      {
        transform: `translate(${x - 1.5} ${TOP + CHECK / 2}) rotate(-90)`,
        'text-anchor': 'middle',
      },
      'check: exactly 100 mm',
    ),
  ];
};

const foot = (report: DipstickReport, y: number): readonly string[] => [
  words([4, y], report.confirm, { 'font-weight': 'bold' }),
  words([4, y + 5], 'Stopped oil, engine in its installed tilt, car on level ground.'),
  ...report.crossings
    .slice(0, 2)
    .map(({ baffle, at }, i) =>
      words(
        [4, y + 10 + 4 * i],
        `Drill "${plain(baffle, 24)}" for the stick at x ${at[0].toFixed(0)}, y ${at[1].toFixed(0)} mm.`,
      ),
    ),
];
