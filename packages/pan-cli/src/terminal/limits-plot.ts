import type { LimitsReport } from 'pan-core';

/** What the plot’s letters stand for, in the order of the cases that have a direction. */
export const caseLetter = (index: number): string => String.fromCharCode(65 + (index % 26));

const STEPS = [0.5, 1, 1.5, 2, 2.5, 3];
/** A character is about twice as high as wide. */
const ASPECT = 2;
const LIMIT = 'o';
const WORST = '#';
const BEYOND = '+';
const RING = '·';

/** The largest g the plot shows: the next half g that everything in it fits under. */
export const plotScale = (report: LimitsReport): number => {
  const values = [
    ...report.directions.flatMap((d) => (d.limit_g === null ? [] : [d.limit_g])),
    ...report.cases.map((c) => c.asks_g),
  ];
  const most = Math.max(0, ...values);
  return STEPS.find((step) => step >= most) ?? 3;
};

/** g between rings: closer ones would hide the limits. */
const ringStep = (scale: number): number => (scale > 1.5 ? 1 : 0.5);

/**
 * The limits by direction as characters: a plan view, nose up, drawn to the side the oil runs to. `width`
 * columns at most; every line is trimmed.
 */
export const limitsPlot = (report: LimitsReport, width: number): string[] => {
  const half = Math.floor((Math.min(47, width) - 1) / 2);
  const rows = Math.round(half / ASPECT);
  const scale = plotScale(report);
  const grid = Array.from({ length: 2 * rows + 1 }, () => Array.from({ length: 2 * half + 1 }, () => ' '));
  const put = (toward: number, g: number, mark: string): void => {
    const t = (toward * Math.PI) / 180;
    const column = half + Math.round((Math.sin(t) * g * half) / scale);
    const line = rows - Math.round((Math.cos(t) * g * rows) / scale);
    const cells = grid[line];
    if (cells?.[column] !== undefined) cells[column] = mark;
  };
  const step = ringStep(scale);
  for (let g = step; g <= scale + 1e-9; g += step) for (let t = 0; t < 360; t += 3) put(t, g, RING);
  for (const { toward_deg, limit_g } of report.directions)
    put(toward_deg, limit_g ?? scale, limit_g === null ? BEYOND : LIMIT);
  if (report.worst !== null) put(report.worst.toward_deg, report.worst.limit_g ?? 0, WORST);
  report.cases.forEach(({ toward_deg, asks_g }, i) => {
    if (toward_deg !== null) put(toward_deg, asks_g, caseLetter(i));
  });
  put(0, 0, '0');
  const centred = (text: string): string => text.padStart(LEFT.length + half + Math.ceil(text.length / 2));
  return [
    centred('braking'),
    ...grid.map((cells, i) => {
      const across = i === rows;
      const row = cells.join('');
      return `${across ? LEFT : ' '.repeat(LEFT.length)}${across ? `${row}${RIGHT}` : row}`.trimEnd();
    }),
    centred('accelerating'),
  ];
};

const LEFT = 'right turn ';
const RIGHT = ' left turn';

/** Columns that the words beside the plot take. */
export const BESIDE = LEFT.length + RIGHT.length;

/** What the plot’s marks mean. */
export const plotKey = (report: LimitsReport): string => {
  const beyond = report.directions.some((d) => d.limit_g === null)
    ? `, ${BEYOND} still covered at 3 g (drawn at the edge)`
    : '';
  return (
    `${LIMIT} bared from here outward, ${WORST} the lowest limit${beyond}; letters are the cases below. ` +
    `A ring every ${ringStep(plotScale(report)).toFixed(1)} g. Nose up, each direction drawn to the side the oil runs to.`
  );
};
