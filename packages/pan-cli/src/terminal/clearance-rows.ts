import type { FitRow } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { stateWord } from './check-numbers.js';
import { ink } from './ink.js';
import { MARGIN } from './job-card.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { type Cell, type Column, row, tableWidth } from './table.js';
import { hang } from './wrap.js';

const STATE: Column = { width: 7 };
const FIGURE: Column = { width: 8, right: true };
const SMALL: Column = { width: 7, right: true };
/** A screen narrower than this tells rest and plus-or-minus in the line below. */
const WIDE = 76;
const WIDEST_NAME = 36;

/** Every clearance with its figures, and below each the place to put a finger on. */
export const clearanceRows = (clearances: readonly FitRow[], screen: Screen): string[] => {
  const paint = ink(screen.colour);
  const wide = screen.width >= WIDE;
  const numbers = wide ? [FIGURE, FIGURE, SMALL, SMALL] : [FIGURE, SMALL];
  const room = screen.width - MARGIN - tableWidth([STATE, { width: 0 }, ...numbers]);
  const shape: readonly Column[] = [STATE, { width: Math.min(WIDEST_NAME, room) }, ...numbers];
  const head = wide ? ['', '', 'at rest', 'worst', '±', 'wants'] : ['', '', 'worst', 'wants'];
  return [
    ...row(
      head.map((text) => ({ text })),
      shape,
    ).map(paint.faint),
    ...shown(clearances).flatMap((one) => {
      const { rest, worst, error, wants } = figures(one, screen);
      const lead: readonly Cell[] = [
        { text: stateWord(one.status), tone: (text) => paint.status(one.status, text) },
        { text: plain(one.name, 80) },
      ];
      const cells = (wide ? [rest, worst, error, wants] : [worst, wants]).map((text) => ({ text }));
      const also = wide ? '' : ` (at rest ${rest}${error === '' ? '' : `, ± ${error}`})`;
      return [
        ...row([...lead, ...cells], shape),
        ...hang('         ', nearestWords(one, screen) + also, screen.width - MARGIN).map(paint.faint),
      ];
    }),
  ];
};

/** Whole millimetres, and tenths where a whole one would hide which side of the limit it is on. */
const figures = (one: FitRow, { units }: Screen) => {
  const { distance_mm, worst_mm, plus_minus_mm, allowed_mm } = one;
  const close = worst_mm !== null && Math.abs(worst_mm - allowed_mm) < 1;
  const mm = (value: number | null, exact: boolean): string => {
    if (value === null) return 'unknown';
    return exact && units === 'mm'
      ? `${value.toFixed(1).replace('-', '−')} mm`
      : quantity(value, 'mm', units);
  };
  return {
    rest: mm(distance_mm, false),
    worst: mm(worst_mm, close),
    error: plus_minus_mm === 0 ? '' : mm(plus_minus_mm, plus_minus_mm % 1 !== 0),
    wants: mm(allowed_mm, close || allowed_mm % 1 !== 0),
  };
};

const nearestWords = (one: FitRow, screen: Screen): string => {
  const { worst_at, worst_between, worst_part, kind } = one;
  if (worst_at === null) {
    const text = sentence(plain(one.because), screen.units);
    return text.charAt(0).toUpperCase() + text.slice(1);
  }
  const part = worst_part === null ? '' : ` to its ${worst_part},`;
  return `${plain(worst_between[kind === 'crank' ? 1 : 0], 60)}${part} at ${placeWords(worst_at, screen)}`;
};

/** The nearest place on the pan or engine, for a finger. */
export const placeWords = (at: readonly [number, number, number], { units }: Screen): string => {
  const mm = (value: number): string => quantity(Math.abs(value), 'mm', units);
  const across =
    Math.abs(at[1]) < 0.5 ? 'on the centre line' : `${mm(at[1])} ${at[1] > 0 ? 'left' : 'right'}`;
  const down =
    Math.abs(at[2]) < 0.5 ? 'at the rail' : `${mm(at[2])} ${at[2] > 0 ? 'above' : 'below'} the rail`;
  return `x ${quantity(at[0], 'mm', units)}, ${across}, ${down}`;
};

/** Thirty bolts would hide the rest: the tightest stands for all that pass. */
const shown = (rows: readonly FitRow[]): readonly FitRow[] => {
  const bolts = rows.filter((one) => one.kind === 'bolt' && one.status === 'pass');
  const [tightest] = bolts;
  return rows.flatMap((one) => {
    if (one.kind !== 'bolt' || one.status !== 'pass') return [one];
    return one === tightest ? [{ ...one, name: `flange bolts (${bolts.length})` }] : [];
  });
};
