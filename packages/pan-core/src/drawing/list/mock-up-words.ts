import { SAYINGS } from '../../weld/index.js';
import { type CutPlan, headLines, materialCautions } from '../cut-plan.js';
import { type MockUpPiece, PIN } from '../solid/mock-up-piece.js';
import { lines } from './bench-words.js';

/** What goes with every solid of the mock-up: what it is for, and what to know before it is made in metal. */
export const mockUpCautions = (plan: CutPlan): string =>
  lines([
    ...headLines(plan, 'mock-ups'),
    `${SAYINGS.fit}.`,
    `${SAYINGS.assembly}.`,
    'A printed or paper pan is for fit only: no oil in it, no running engine over it, nothing welded near it.',
    'Lengths in the STL files are mm, axes x forward, y left, z up from the rail; see that the printing program does not scale them.',
    ...[...new Set(plan.parts.map(({ part }) => part.material))].flatMap((material) => [
      '',
      `When it is made in ${material}:`,
      ...materialCautions(material).map((text) => `- ${text}`),
    ]),
  ]);

const whole = (value: number): string => (Math.round(value) + 0).toFixed(0);

/** Which piece of the printed pan goes where, and how they are put together. */
export const pieceList = (
  plan: CutPlan,
  pieces: readonly MockUpPiece[],
  files: readonly string[],
): string => {
  const { bed, wall } = plan.design.shop.printer;
  const span = (piece: MockUpPiece, k: 0 | 1 | 2): string =>
    `${['x', 'y', 'z'][k]} ${whole(piece.low[k])} to ${whole(piece.high[k])}`;
  const length =
    Math.max(...pieces.map(({ high }) => high[0])) - Math.min(...pieces.map(({ low }) => low[0]));
  const pinned = pieces.some(({ pins }) => pins > 0);
  return lines([
    ...headLines(plan, 'printing the mock-up'),
    `${pieces.length} pieces for a bed of ${bed.map((side) => side.toFixed(0)).join(' x ')} mm, walls of ${wall.toFixed(1)} mm; the outside is the pan’s own outside.`,
    pinned
      ? `Pins: offcuts of 1.75 mm filament, ${(2 * PIN.depth - 1).toFixed(0)} mm long, in the blind holes of ${(2 * PIN.radius).toFixed(1)} mm in both faces of a cut; glue over them.`
      : 'No pins: the wall is too thin for them (3.5 mm). Glue cut face to cut face.',
    `Print each with a cut face down where it has one. Measure one piece before the rest: a printer that is 1 % off is ${(length / 100).toFixed(0)} mm off over this pan.`,
    '',
    'x forward from the rear face of the block, y left, z up from the rail, mm:',
    ...pieces.map(
      (piece, i) =>
        `${files[i]}.stl  ${span(piece, 0)}, ${span(piece, 1)}, ${span(piece, 2)}; ${piece.pins} pin holes`,
    ),
  ]);
};
