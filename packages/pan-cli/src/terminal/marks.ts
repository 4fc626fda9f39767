import type { Grounds } from 'pan-core';
import type { Screen } from '../commands/command.js';
import type { Sureness } from '../commands/sureness.js';
import { assumptionLines } from './assumptions.js';
import { ink } from './ink.js';
import { block, blockText } from './job-card.js';
import { plain } from './plain.js';
import { sentence } from './quantity.js';
import { ASSUMED_MARK, MODEL_MARK, markOf } from './sign.js';

/** What the signs mean, with the models that were used. */
export const markLines = (rests_on: Readonly<Record<string, Grounds>>, screen: Screen): string[] => {
  const all = Object.values(rests_on);
  if (all.every((one) => markOf(one) === '')) return [];
  const models = [...new Set(all.flatMap(({ model }) => (model === null ? [] : [model])))];
  const say = (lead: string, text: string): string[] => blockText(lead, text, screen.width);
  return [
    ...say('   ', 'No mark: your measurements and geometry alone, as good as the tape.'),
    ...(all.some(({ assumed }) => assumed.length > 0)
      ? say(`${ASSUMED_MARK}  `, 'leans on a value that was assumed, listed under ASSUMED.')
      : []),
    ...(models.length > 0
      ? say(`${MODEL_MARK}  `, `a model’s answer, with its limits: ${models.join('; ')}.`)
      : []),
  ];
};

/** The signs' meaning and the assumptions behind them; nothing where no number bears a sign. */
export const sureBlocks = ({ rests_on, assumed }: Sureness, screen: Screen): string[] => {
  const { heading } = ink(screen.colour);
  const items = assumptionLines(assumed).flatMap((text) =>
    blockText('- ', sentence(plain(text), screen.units), screen.width),
  );
  return [...block('MARKS', markLines(rests_on, screen), heading), ...block('ASSUMED', items, heading)];
};
