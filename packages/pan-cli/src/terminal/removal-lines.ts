import type { RaiseReport, RemovalLeg, RemovalReport } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { blockText } from './job-card.js';
import { plain } from './plain.js';
import { quantity } from './quantity.js';

type Words = (mm: number) => string;

/** One move of the pan from a place to the next. */
const moveWords = (from: RemovalLeg, to: RemovalLeg, mm: Words): string => {
  const [x, y, z, turn] = [
    to.forward_mm - from.forward_mm,
    to.left_mm - from.left_mm,
    to.down_mm - from.down_mm,
    to.nose_up_deg - from.nose_up_deg,
  ];
  const part = (by: number, more: string, less: string): readonly string[] =>
    Math.abs(by) < 0.5 ? [] : [`${mm(Math.abs(by))} ${by > 0 ? more : less}`];
  const parts = [
    ...part(z, 'down', 'up'),
    ...part(x, 'forward', 'back'),
    ...part(y, 'to the left', 'to the right'),
    ...(Math.abs(turn) < 0.05 ? [] : [`its front ${Math.abs(turn).toFixed(0)}° ${turn > 0 ? 'up' : 'down'}`]),
  ];
  return parts.join(' with ');
};

const BOLTED: RemovalLeg = { forward_mm: 0, left_mm: 0, down_mm: 0, nose_up_deg: 0 };

const wayWords = (legs: readonly RemovalLeg[], mm: Words): string =>
  legs.map((leg, i) => moveWords(legs[i - 1] ?? BOLTED, leg, mm)).join('; ');

const straightWords = ({ straight_down_mm, straight_binds }: RemovalReport, mm: Words): string =>
  straight_binds === null
    ? 'The pan comes straight down.'
    : `Straight down it comes ${mm(straight_down_mm)}, then the ${plain(straight_binds, 60)} is in the way.`;

const pickupWords = ({ pickup, pickup_catches }: RemovalReport): string =>
  pickup === null
    ? 'No way was found, the pickup left on or undone: take the engine out, or make the pan shallower where it is caught.'
    : pickup === 'stays'
      ? 'The pickup can stay on the engine.'
      : `The pickup has to be undone and come along: the ${plain(pickup_catches ?? 'pan', 60)} catches it.`;

/** How it comes out with the engine where it is; empty where it does not, or straight down says it. */
const stillWords = (report: RemovalReport, mm: Words): string => {
  const { engine_lift_mm, legs, sideways, straight_binds, tilted_legs } = report;
  if (tilted_legs !== null)
    return `With the engine where it is it comes out tilted: ${wayWords(tilted_legs, mm)}.`;
  if (engine_lift_mm !== 0 || straight_binds === null) return '';
  return `With the engine where it is it comes out${sideways ? ', going sideways' : ''}: ${wayWords(legs, mm)}.`;
};

const FREES: Readonly<Record<RaiseReport['jack'], string>> = {
  'lifted level': 'the engine lifted level',
  'nose raised': 'the nose raised on the gearbox mounting',
  'gearbox end raised': 'the gearbox end raised on the engine mountings',
  'left side raised': 'the left side raised on the right mounting',
  'right side raised': 'the right side raised on the left mounting',
};

const byWords = ({ jack, raised_mm, turned_deg }: RaiseReport, mm: Words): string =>
  `${FREES[jack]} by ${mm(raised_mm ?? 0)}${jack === 'lifted level' ? '' : ` (${(turned_deg ?? 0).toFixed(1)}°)`}`;

const stopWords = ({ most_mm, most_binds, jack }: RaiseReport, mm: Words): string =>
  `${FREES[jack]} up to ${mm(most_mm)}${most_binds === null ? '' : `, where ${plain(most_binds, 80)} stops it`}`;

/** The least raise with its way, what else frees it, and what does not. */
const raiseWords = ({ raises, tilted_legs, sideways }: RemovalReport, mm: Words): readonly string[] => {
  const free = raises.filter(({ raised_mm }) => raised_mm !== null);
  const shut = raises.filter(({ raised_mm }) => raised_mm === null);
  const [least, ...others] = free;
  const lead = tilted_legs === null && !sideways ? 'Least raise that frees it' : 'Or, the pan kept level';
  return [
    ...(least === undefined ? [] : [`${lead}: ${byWords(least, mm)}. Then ${wayWords(least.legs, mm)}.`]),
    ...(others.length === 0 ? [] : [`Or ${others.map((raise) => byWords(raise, mm)).join('; or ')}.`]),
    ...(shut.length === 0
      ? []
      : [`Not found to free it: ${shut.map((raise) => stopWords(raise, mm)).join('; ')}.`]),
  ];
};

/** How the pan comes off with the engine in the car. */
export const removalLines = (report: RemovalReport, { width, units }: Screen): string[] => {
  const mm: Words = (value) => quantity(value, 'mm', units);
  const say = (text: string): string[] => (text === '' ? [] : blockText('', text, width));
  return [
    ...say(straightWords(report, mm)),
    ...say(pickupWords(report)),
    ...say(stillWords(report, mm)),
    ...raiseWords(report, mm).flatMap(say),
    ...(report.complete ? [] : say('A search ran out of looks: less may do.')),
    ...say(report.taken),
    ...(report.not_given.length === 0
      ? []
      : say(`Only what the file lists is in the way; it does not give ${report.not_given.join(', ')}.`)),
  ];
};
