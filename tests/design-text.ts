import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readDesignText } from 'pan-cli/read/index.js';
import { PanError, type Problem, type ReadDesign } from 'pan-core';

export const exampleText = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../packages/pan-cli/examples/${name}.yaml`, import.meta.url)), 'utf8');

/** The text with one piece changed; fails when the piece is not there exactly once. */
export const changed = (text: string, from: string, to: string): string => {
  if (text.split(from).length !== 2) throw new Error(`"${from}" is not there exactly once`);
  return text.replace(from, () => to);
};

/** Fewest keys that make a design. */
export const SMALLEST = `format: 1
title: Smallest
units: mm
engine:
  rail: {length: 690, width: 250}
  crankcase_top: 140
oil: {fill: 7.2 L}
pan:
  floor_inside: [[655, 40], [320, 58], [320, 165], [32, 172]]
  width_inside: 190
pickup: {at: [140, 0]}
`;

export const read = (text: string): Promise<ReadDesign> => readDesignText(text);

/** Every problem of a text that must not be read. */
export const problemsIn = async (text: string): Promise<readonly Problem[]> => {
  try {
    await readDesignText(text);
  } catch (error) {
    if (error instanceof PanError) return error.problems;
    throw error;
  }
  throw new Error('the text was read without a problem');
};

export const keyOf = ({ path }: Problem): string => path.join('.');

/** Line and column, counted from 1, of the only place where `piece` stands. */
export const placeIn = (text: string, piece: string): { readonly line: number; readonly column: number } => {
  if (text.split(piece).length !== 2) throw new Error(`"${piece}" is not there exactly once`);
  const before = text.slice(0, text.indexOf(piece));
  return { line: before.split('\n').length, column: before.length - before.lastIndexOf('\n') };
};
