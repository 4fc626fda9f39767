import type { SupplyReport } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { ink } from './ink.js';
import { blockText } from './job-card.js';
import { quantity, sentence } from './quantity.js';
import { type Column, row } from './table.js';

const CELSIUS: Column = { width: 7, right: true };
const THICK: Column = { width: 12, right: true };
const PULL: Column = { width: 12, right: true };
const AIR = 1;
const SHAPE = [CELSIUS, THICK, PULL, PULL];

/** What the pump pulls against from deep cold to hot oil, as a table. */
export const supplyLines = (supply: SupplyReport, screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const { rows, limit_bar, full_flow_from_C } = supply;
  const bar = (value: number): { text: string; tone?: (text: string) => string } => {
    // No pump draws more than the air above the oil pushes.
    const text = value > AIR ? `over ${AIR} bar` : quantity(value, 'bar', screen.units);
    return value > limit_bar ? { text, tone: (told) => paint.status('warn', told) } : { text };
  };
  const [first] = rows;
  const say = (text: string): string[] => blockText('', sentence(text, screen.units), screen.width);
  const from =
    full_flow_from_C === null
      ? 'Full flow is never within the limit.'
      : `Full flow is within it from ${`${Math.ceil(full_flow_from_C)}`.replace('-', '−')} °C up.`;
  return [
    ...say(
      `Tube ${supply.tube_length_mm.toFixed(0)} mm long, bore ${supply.bore_mm.toFixed(0)} mm, bends ${supply.bends_deg.toFixed(0)} deg in all, port ${supply.rise_mm.toFixed(0)} mm over the oil.`,
    ),
    ...row([{ text: 'oil' }, { text: 'viscosity' }, { text: 'cranking' }, { text: 'full flow' }], SHAPE).map(
      paint.faint,
    ),
    ...rows.flatMap((one) =>
      row(
        [
          { text: `${one.temperature_C} °C`.replace('-', '−') },
          {
            text: `${one.viscosity_mm2_s < 100 ? one.viscosity_mm2_s.toFixed(1) : one.viscosity_mm2_s.toFixed(0)} mm²/s`,
          },
          bar(one.cranking.pull_bar),
          bar(one.full_flow.pull_bar),
        ],
        SHAPE,
      ),
    ),
    ...say(
      `Cranking moves ${first?.cranking.flow_L_min.toFixed(1) ?? '?'} L/min, full flow ${first?.full_flow.flow_L_min.toFixed(0) ?? '?'} L/min. A pump lifts about ${limit_bar.toFixed(1)} bar (common practice, no source). ${from}`,
    ),
  ];
};
