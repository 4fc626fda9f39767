import type { FitReport } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { ink } from './ink.js';
import { MARGIN } from './job-card.js';
import { plain } from './plain.js';
import { quantity } from './quantity.js';
import { type Column, row, tableWidth } from './table.js';

/** A narrow screen has room for the throw's number only. */
const THROW: Column = { width: 12 };
const NUMBER: Column = { width: 5 };
const LEAST = 7;
const USUAL = 11;

/** How near the rod of each throw comes to floor, walls, baffles and tube: a row a throw, a column a thing. */
export const throwRows = ({ throws }: FitReport, screen: Screen): string[] => {
  const things = throws[0]?.near.map(({ to }) => to) ?? [];
  if (things.length === 0) return [];
  const widthBeside = (first: Column): number =>
    Math.min(
      USUAL,
      Math.floor(
        (screen.width - MARGIN - tableWidth([first, ...things.map(() => ({ width: 0 }))])) / things.length,
      ),
    );
  const first = widthBeside(THROW) >= LEAST ? THROW : NUMBER;
  const width = widthBeside(first);
  // Too many baffles for the screen: the table of clearances above has the nearest of each.
  if (width < LEAST) return [];
  const shape: readonly Column[] = [first, ...things.map(() => ({ width, right: true }))];
  return [
    ...row([{ text: 'throw' }, ...things.map((text) => ({ text: plain(text, 30) }))], shape).map(
      ink(screen.colour).faint,
    ),
    ...throws.flatMap((one) =>
      row(
        [
          {
            text:
              first === NUMBER ? `${one.throw}` : `${one.throw} x ${quantity(one.x_mm, 'mm', screen.units)}`,
          },
          ...one.near.map(({ distance_mm }) => ({ text: quantity(distance_mm, 'mm', screen.units) })),
        ],
        shape,
      ),
    ),
  ];
};
