import type { CheckReport, CrankDipRow } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { ink } from './ink.js';
import { blockText, MARGIN } from './job-card.js';
import { caseLetter } from './limits-plot.js';
import { plain } from './plain.js';
import { quantity } from './quantity.js';
import { type Column, row } from './table.js';

const THROW: Column = { width: 12 };
const DEPTH: Column = { width: 8, right: true };
const GAP = 2;

/** How deep each throw dips in each case: a row a throw, a column a case by its letter, told below. */
export const dipRows = ({ crank_dip }: CheckReport, screen: Screen): string[] => {
  if (crank_dip.length === 0) return [];
  const paint = ink(screen.colour);
  const throws = crank_dip.reduce((most, one) => Math.max(most, one.throw), 0);
  const cases = Array.from({ length: crank_dip.length / throws }, (_, i) =>
    crank_dip.slice(i * throws, (i + 1) * throws),
  );
  const across = Math.max(1, Math.floor((screen.width - MARGIN - THROW.width) / (DEPTH.width + GAP)));
  const parts = Array.from({ length: Math.ceil(cases.length / across) }, (_, i) => i * across);
  const key = cases.map(([one], i) => `${caseLetter(i)} ${plain(one?.case ?? '', 60)}`).join(', ');
  return [
    ...parts.flatMap((from) => {
      const shown = cases.slice(from, from + across);
      const shape = [THROW, ...shown.map(() => DEPTH)];
      const head = ['throw', ...shown.map((_, i) => caseLetter(from + i))];
      return [
        ...row(
          head.map((text) => ({ text })),
          shape,
        ).map(paint.faint),
        ...(shown[0] ?? []).flatMap((one, i) =>
          row(
            [
              { text: `${one.throw} x ${quantity(one.x_mm, 'mm', screen.units)}` },
              ...shown.map((of) => ({ text: depthText(of[i], screen) })),
            ],
            shape,
          ),
        ),
      ];
    }),
    ...blockText(
      '',
      `Rods under oil, the deeper of held and settled; negative is clear, – no oil below. ${key}.`,
      screen.width,
    ).map(paint.faint),
  ];
};

const depthText = (one: CrankDipRow | undefined, { units }: Screen): string =>
  one === undefined || one.depth_mm === null ? '–' : quantity(one.depth_mm, 'mm', units);
