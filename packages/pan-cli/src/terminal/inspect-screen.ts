import type { DrawingRules, ShopRule } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { stateWord } from './check-numbers.js';
import { ink } from './ink.js';
import { block, blockText, MARGIN } from './job-card.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { type Column, row } from './table.js';
import { wrap } from './wrap.js';

const STATE: Column = { width: 7 };
const VALUE: Column = { width: 10, right: true };

/** What keeps a drawing from being cut first, then every rule. */
export const inspectScreen = (file: string, found: DrawingRules, screen: Screen): string => {
  const paint = ink(screen.colour);
  const say = (lead: string, text: string): string[] =>
    blockText(lead, sentence(plain(text), screen.units), screen.width);
  const fails = found.rules.filter((rule) => rule.status === 'fail');
  const warns = found.rules.filter((rule) => rule.status === 'warn' || rule.status === 'unknown');
  const [first] = fails.length > 0 ? fails : warns;
  const status = fails.length > 0 ? 'fail' : warns.length > 0 ? 'warn' : 'pass';
  const verdict = {
    fail: 'NOT FIT TO CUT FROM',
    warn: 'FIT TO CUT FROM, WITH A WORD TO THE SHOP',
    pass: 'FIT TO CUT FROM',
  }[status];
  const lines = [
    paint.status(status, verdict),
    ...wrap(plain(file, 200), screen.width).map(paint.faint),
    ...(first === undefined
      ? []
      : block(
          'FIRST',
          say('', `${first.title}: ${first.because}${placeWords(first, screen)}`),
          paint.heading,
        )),
    ...block(
      'RULES',
      found.rules.flatMap((rule) => ruleRows(rule, screen)),
      paint.heading,
    ),
    ...block(
      'CUT',
      say('', `Layers taken for cuts: ${listed(found.cutLayers)}; in the file: ${listed(found.layers)}.`),
      paint.heading,
    ),
    ...block(
      'NOT READ',
      found.passedOver.flatMap((clause) => say('- ', clause)),
      paint.heading,
    ),
  ];
  return `${lines.join('\n')}\n`;
};

/** Holes and gaps are judged by tenths of a mm. */
const fineLength = (value: number, { units }: Screen): string =>
  units === 'mm' ? `${value.toFixed(1)} mm` : quantity(value, 'mm', units);

const listed = (names: readonly string[]): string =>
  names.length === 0
    ? 'none'
    : `${names
        .slice(0, 8)
        .map((name) => plain(name, 40))
        .join(', ')}${names.length > 8 ? ` and ${names.length - 8} more` : ''}`;

const placeWords = ({ at }: ShopRule, { units }: Screen): string =>
  at === null
    ? ''
    : ` The first is at x = ${quantity(at[0], 'mm', units)}, y = ${quantity(at[1], 'mm', units)}.`;

const ruleRows = (rule: ShopRule, screen: Screen): readonly string[] => {
  const paint = ink(screen.colour);
  const title: Column = { width: Math.max(14, Math.min(30, screen.width - MARGIN - 21)) };
  const value =
    rule.value === null || (rule.unit !== 'mm' && rule.id !== 'closed')
      ? ''
      : rule.id === 'closed'
        ? `${rule.value} loops`
        : fineLength(rule.value, screen);
  const cells = [
    { text: stateWord(rule.status), tone: (text: string) => paint.status(rule.status, text) },
    { text: rule.title },
    { text: rule.id === 'units' ? '' : value },
  ];
  const why =
    rule.status === 'pass'
      ? []
      : blockText(
          '  ',
          sentence(plain(`${rule.because}${placeWords(rule, screen)}`), screen.units),
          screen.width,
        );
  return [...row(cells, [STATE, title, VALUE]), ...why];
};
