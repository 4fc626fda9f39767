import type { Point2 } from '../design.js';
import type { Place } from '../field/index.js';
import { checkOutline } from '../keys/rail-keys.js';
import type { DrawnRail } from '../rail-outline.js';
import type { Notes } from './notes.js';

/** A rail is longer than a one-cylinder engine and shorter than a ship's, mm. */
const SHORTEST = 100;
const LONGEST = 3000;
const MOST_CORNERS = 400;
/** A rear face drawn this little off zero is on it, mm. */
const ON_FACE = 0.5;

const mm = (value: number): string => `${Number(value.toFixed(2))} mm`;
const at = ([x, y]: Point2): string => `[${Number(x.toFixed(1))}, ${Number(y.toFixed(1))}]`;

/** The outline that a drawing holds, on the page; null after saying what is wrong with it. */
export const drawnOutline = (drawn: DrawnRail, path: Place, notes: Notes): readonly Point2[] | null => {
  const { outline } = drawn;
  const refuse = (says: string, advice: string): null => {
    notes.refuse(path, { code: 'shape-rail', says, advice });
    return null;
  };
  if (outline === null) return refuse(...whyOpen(drawn));
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const [rear, front] = [Math.min(...xs), Math.max(...xs)];
  const wide = Math.max(...ys) - Math.min(...ys);
  if (front - rear < SHORTEST || front - rear > LONGEST) {
    const says = `holds an outline ${mm(front - rear)} long and ${mm(wide)} wide`;
    return refuse(says, 'Set engine.rail.drawn_in to the drawing’s unit, and forward to its front.');
  }
  if (outline.length > MOST_CORNERS)
    return refuse(
      `holds an outline of ${outline.length} corners; it may have ${MOST_CORNERS}`,
      'Trace it with lines and arcs; a scan’s noise has a corner everywhere.',
    );
  if (rear < -ON_FACE) {
    const says = `reaches ${mm(-rear)} behind the rear face of the block`;
    return refuse(
      says,
      `Set engine.rail.origin to the point as drawn on the rear face, and forward to its front.`,
    );
  }
  const onFace = outline.map(([x, y]): Point2 => [Math.max(x, 0), y]);
  const before = notes.problems.length;
  checkOutline(onFace, (fault) => notes.refuse(path, fault));
  return notes.problems.length > before ? null : onFace;
};

const whyOpen = ({ loose, forks, otherLines }: DrawnRail): readonly [says: string, advice: string] => {
  const [fork] = forks;
  if (fork !== undefined)
    return [
      `has no closed outline: more than two lines meet at ${at(fork)} mm from the rear face`,
      'Take the extra lines out, or name the outline’s layer.',
    ];
  const [pair] = loose;
  if (pair === undefined || otherLines === 0)
    return ['has no closed line on it', 'Draw the outer edge of the pan face as one closed line.'];
  const gap = Math.hypot(pair[0][0] - pair[1][0], pair[0][1] - pair[1][1]);
  return [
    `has no closed outline: ends nearest each other are ${mm(gap)} apart at ${at(pair[0])} mm from the rear face`,
    gap <= 2
      ? `Close it in the drawing, or set engine.rail.close_gaps to ${Math.ceil(gap * 10) / 10} mm.`
      : 'Close it in the drawing.',
  ];
};

/** What was done to a drawing in reading it, in one clause after another. */
export const drawnNote = (name: string, drawn: DrawnRail, passedOver: readonly string[]): string => {
  const { gaps, doubled, otherLoops, otherLines, rounded, outline } = drawn;
  const widest = gaps.reduce((most, gap) => (gap.wide > most.wide ? gap : most), {
    at: [0, 0] as Point2,
    wide: 0,
  });
  const said = [
    rounded && outline !== null
      ? `curves became ${outline.length} corners, within 0.05 mm of what was drawn`
      : '',
    gaps.length > 0
      ? `${gaps.length} ${gaps.length === 1 ? 'gap was' : 'gaps were'} closed, the widest ${mm(widest.wide)} at ${at(widest.at)}`
      : '',
    doubled > 0 ? `${doubled} ${doubled === 1 ? 'line was' : 'lines were'} drawn twice` : '',
    otherLoops > 0
      ? `${otherLoops} smaller closed ${otherLoops === 1 ? 'line was' : 'lines were'} left out`
      : '',
    otherLines > 0 ? `${otherLines} open ${otherLines === 1 ? 'line was' : 'lines were'} left out` : '',
    passedOver.length > 0 ? `left out: ${passedOver.join(', ')}` : '',
  ].filter((text) => text !== '');
  return [`as drawn in ${name}`, ...said].join('; ');
};
