import type { RemovalLeg, RemovalReport } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { blockText } from './job-card.js';
import { plain } from './plain.js';
import { quantity } from './quantity.js';

type Words = (mm: number) => string;

/** One move of the pan from a place to the next. */
const moveWords = (from: RemovalLeg, to: RemovalLeg, mm: Words): string => {
  const [x, z, turn] = [
    to.forward_mm - from.forward_mm,
    to.down_mm - from.down_mm,
    to.nose_up_deg - from.nose_up_deg,
  ];
  const parts = [
    ...(Math.abs(z) < 0.5 ? [] : [`${mm(Math.abs(z))} ${z > 0 ? 'down' : 'up'}`]),
    ...(Math.abs(x) < 0.5 ? [] : [`${mm(Math.abs(x))} ${x > 0 ? 'forward' : 'back'}`]),
    ...(Math.abs(turn) < 0.05 ? [] : [`its front ${Math.abs(turn).toFixed(0)}° ${turn > 0 ? 'up' : 'down'}`]),
  ];
  return parts.join(' with ');
};

const wayWords = (legs: readonly RemovalLeg[], mm: Words): string => {
  const bolted: RemovalLeg = { forward_mm: 0, down_mm: 0, nose_up_deg: 0 };
  return legs.map((leg, i) => moveWords(legs[i - 1] ?? bolted, leg, mm)).join('; ');
};

const straightWords = ({ straight_down_mm, straight_binds }: RemovalReport, mm: Words): string =>
  straight_binds === null
    ? 'The pan comes straight down.'
    : `Straight down it comes ${mm(straight_down_mm)}, then the ${plain(straight_binds, 60)} is in the way.`;

const pickupWords = ({ pickup, pickup_catches }: RemovalReport): string =>
  pickup === null
    ? 'No way was found, the pickup left on or undone.'
    : pickup === 'stays'
      ? 'The pickup can stay on the engine.'
      : `The pickup has to be undone and come along: the ${plain(pickup_catches ?? 'pan', 60)} catches it.`;

const liftWords = (report: RemovalReport, mm: Words): string => {
  const { engine_lift_mm, most_lift_mm, most_lift_binds, legs, straight_binds } = report;
  if (engine_lift_mm === 0)
    return straight_binds === null ? '' : `With the engine where it is it comes out: ${wayWords(legs, mm)}.`;
  if (engine_lift_mm !== null)
    return `With the engine lifted ${mm(engine_lift_mm)} it comes out: ${wayWords(legs, mm)}.`;
  const stop = most_lift_binds === null ? '' : `, where ${plain(most_lift_binds, 60)} stops it`;
  return `No lift of the engine up to ${mm(most_lift_mm)}${stop}, was found to free it.`;
};

const tiltWords = ({ tilted_legs, engine_lift_mm }: RemovalReport, mm: Words): string => {
  if (engine_lift_mm === 0) return '';
  return tilted_legs === null
    ? 'Tilting the pan by up to 12° without lifting was not found to free it.'
    : `Without lifting, tilted as it comes: ${wayWords(tilted_legs, mm)}.`;
};

/** How the pan comes off with the engine in the car. */
export const removalLines = (report: RemovalReport, { width, units }: Screen): string[] => {
  const mm: Words = (value) => quantity(value, 'mm', units);
  const say = (text: string): string[] => (text === '' ? [] : blockText('', text, width));
  return [
    ...say(straightWords(report, mm)),
    ...say(pickupWords(report)),
    ...say(liftWords(report, mm)),
    ...say(tiltWords(report, mm)),
    ...(report.complete ? [] : say('A search ran out of looks: a smaller lift may do.')),
    ...say(report.taken),
    ...(report.not_given.length === 0
      ? []
      : say(`Only what the file lists is in the way; it does not give ${report.not_given.join(', ')}.`)),
  ];
};
