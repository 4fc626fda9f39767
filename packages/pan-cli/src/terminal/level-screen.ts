import { type LevelReport, type LevelState, SAYINGS } from 'pan-core';
import type { Screen } from '../commands/command.js';
import type { Sureness } from '../commands/sureness.js';
import { ink } from './ink.js';
import { block, blockText, MARGIN } from './job-card.js';
import { sureBlocks } from './marks.js';
import { plain } from './plain.js';
import { quantity } from './quantity.js';
import { markOf } from './sign.js';
import { type Column, row } from './table.js';
import { wrap } from './wrap.js';

const POOL: Column = { width: 12 };
const VOLUME: Column = { width: 11, right: true };
const SURFACE: Column = { width: 23, right: true };

const loadText = ({ forward_g, left_g }: LevelReport['attitude'], screen: Screen): string => {
  const g = (value: number): string => quantity(Math.abs(value), 'g', screen.units);
  const parts = [
    forward_g === 0 ? '' : `${forward_g < 0 ? 'braking' : 'accelerating'} ${g(forward_g)}`,
    left_g === 0 ? '' : `${left_g > 0 ? 'left' : 'right'} turn ${g(left_g)}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'standing still' : parts.join(', ');
};

type Mark = (key: string) => string;

const mouthLines = ({ pickup }: LevelState, mark: Mark, screen: Screen): string[] => {
  const depth = quantity(Math.abs(pickup.submergence_mm), 'mm', screen.units) + mark('submergence_mm');
  const paint = ink(screen.colour);
  const [word, text] = pickup.covered
    ? (['covered', `its rim is ${depth} under the oil`] as const)
    : (['BARED', `its rim stands ${depth} out of the oil`] as const);
  const draw =
    pickup.covered && pickup.draw_s !== null
      ? `The pump takes it bare in ${quantity(pickup.draw_s, 's', screen.units)}${mark('pool_draw_s')} if nothing runs back.`
      : '';
  const [first = '', ...rest] = wrap(`Mouth ${word}: ${text}. ${draw}`, screen.width - MARGIN);
  return [paint.status(pickup.covered ? 'pass' : 'fail', first), ...rest];
};

/** Less than this prints as nothing; a program reads it in the JSON. */
const LEAST_L = 0.005;

const poolLines = ({ pools }: LevelState, still: boolean, mark: Mark, screen: Screen): string[] => {
  const shape = [POOL, VOLUME, SURFACE];
  const head = row([{ text: 'pool' }, { text: 'holds' }, { text: 'surface below the rail' }], shape);
  return [
    ...head.map(ink(screen.colour).faint),
    ...pools
      .filter((pool) => pool.has_pickup || pool.volume_L >= LEAST_L)
      .flatMap((pool) =>
        row(
          [
            { text: pool.has_pickup ? 'at the mouth' : 'elsewhere' },
            { text: quantity(pool.volume_L, 'L', screen.units) + mark('surface_mm') },
            // Under load another pool's surface, drawn on to the mouth, is far from any oil.
            {
              text:
                still || pool.has_pickup
                  ? quantity(pool.surface_mm, 'mm', screen.units) + mark('surface_mm')
                  : '',
            },
          ],
          shape,
        ),
      ),
  ];
};

const stateBlock = (
  label: string,
  about: string,
  state: LevelState,
  { still, mark }: { readonly still: boolean; readonly mark: Mark },
  screen: Screen,
): string[] => {
  const paint = ink(screen.colour);
  const lines = [
    ...blockText('', about, screen.width).map(paint.faint),
    ...mouthLines(state, mark, screen),
    ...poolLines(state, still, mark, screen),
  ];
  return block(label, lines, paint.heading);
};

const HELD = 'What lips, gaps and holes keep; doors and weeps shut.';
const SETTLED = 'After long enough: weeps run both ways, doors their own way.';

const swingLines = ({ settled, slosh }: LevelReport, mark: Mark, screen: Screen): string[] => {
  const pool = settled.pools.find(({ has_pickup }) => has_pickup);
  const { period_fore_s: fore, period_side_s: side } = pool ?? { period_fore_s: null, period_side_s: null };
  if (fore === null || side === null) return [];
  const say = (text: string): string[] => blockText('', text, screen.width);
  return [
    ...say(
      `The mouth’s pool swings in ${quantity(fore, 's', screen.units)}${mark('period_s')} along the car and ${quantity(side, 's', screen.units)}${mark('period_s')} across it.`,
    ),
    ...say(
      `A load that comes on all at once swings it ${slosh.step_overshoot.toFixed(2)} times as far as it then stands.`,
    ),
    ...say(slosh.not_modelled).map(ink(screen.colour).faint),
  ];
};

/** Where the oil lies at one load, as text. */
export const levelScreen = (title: string, report: LevelReport, sure: Sureness, screen: Screen): string => {
  const paint = ink(screen.colour);
  const { attitude, oil, held, settled } = report;
  const inPan = quantity(oil.in_pan_L, 'L', screen.units);
  const still = attitude.forward_g === 0 && attitude.left_g === 0;
  // Under load the same number leans on the model of still oil too.
  const mark: Mark = (key) => markOf(sure.rests_on[key] ?? sure.rests_on[`loaded_${key}`]);
  const critical = held.pickup.critical_mm;
  const notes = [
    'Surfaces are depths below the rail, straight down from it, under the mouth’s centre.',
    ...(critical === null
      ? []
      : [
          `A rule for water wants ${quantity(critical, 'mm', screen.units)}${mark('critical_mm')} over a mouth this size; only a hint for oil.`,
        ]),
    `${SAYINGS.geometry}.`,
  ];
  const lines = [
    paint.strong(`${inPan}${mark('in_pan_L')} in the pan, ${loadText(attitude, screen)}`),
    ...wrap(plain(title, 200), screen.width).map(paint.faint),
    ...wrap(
      `The oil’s surface lies ${quantity(attitude.surface_deg, 'deg', screen.units)} off the rail.`,
      screen.width,
    ),
    ...stateBlock('HELD', HELD, held, { still, mark }, screen),
    ...stateBlock('SETTLED', SETTLED, settled, { still, mark }, screen),
    ...block('SLOSH', swingLines(report, mark, screen), paint.heading),
    ...sureBlocks(sure, screen),
    ...block(
      'REMEMBER',
      notes.flatMap((note) => blockText('', note, screen.width)),
      paint.heading,
    ),
  ];
  return `${lines.join('\n')}\n`;
};
