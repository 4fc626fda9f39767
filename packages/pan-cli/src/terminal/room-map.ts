import type { RoomReport } from 'pan-core';
import type { LengthUnits } from '../commands/command.js';
import { plain } from './plain.js';
import { quantity } from './quantity.js';

const CLEAR = '·';
const DESIGN = '@';
const LOWEST = '=';
const LABEL = 8;

/** The letter of each name that shuts a place on the map, in order of first use from the top. */
export const roomLetters = ({ map }: RoomReport): ReadonlyMap<number, string> => {
  const letters = new Map<number, string>();
  map.spare_mm.forEach((line, j) => {
    line.forEach((spare, i) => {
      const binds = map.binds[j]?.[i];
      if (spare < 0 && binds !== undefined && !letters.has(binds))
        letters.set(binds, String.fromCharCode(97 + (letters.size % 26)));
    });
  });
  return letters;
};

const nearest = (list: readonly number[], value: number): number =>
  list.reduce((best, one, i) => (Math.abs(one - value) < Math.abs((list[best] ?? 0) - value) ? i : best), 0);

const signed = (mm: number, units: LengthUnits): string =>
  mm === 0 ? '0' : `${mm > 0 ? '+' : ''}${quantity(mm, 'mm', units)}`;

/** Room to move as characters: across is fore and aft with the front to the right, up is up. */
export const roomMap = (room: RoomReport, units: LengthUnits): string[] => {
  const { map, lowest } = room;
  const letters = roomLetters(room);
  const marks = new Map<string, string>();
  const mark = (forward: number, up: number, sign: string): void => {
    marks.set(`${nearest(map.forward_mm, forward)},${nearest(map.up_mm, up)}`, sign);
  };
  if (lowest !== null) mark(lowest.forward_mm, lowest.up_mm, LOWEST);
  mark(0, 0, DESIGN);
  const rows = map.spare_mm.map((line, j) => {
    const up = map.up_mm[j] ?? 0;
    const label = j % 5 === 0 ? signed(up, units) : '';
    const cells = line.map((spare, i) => {
      const own = marks.get(`${i},${j}`);
      return own ?? (spare >= 0 ? CLEAR : (letters.get(map.binds[j]?.[i] ?? 0) ?? '?'));
    });
    return `${label.padStart(LABEL)} ${cells.join('')}`;
  });
  const across = map.forward_mm.length;
  const ends = [map.forward_mm[0] ?? 0, map.forward_mm[across - 1] ?? 0].map((mm) => signed(mm, units));
  const middle = 'front to the right';
  const foot = `${ends[0]}${middle.padStart(Math.floor((across + middle.length) / 2) - (ends[0]?.length ?? 0))}`;
  return [
    ...rows,
    `${' '.repeat(LABEL + 1)}${foot.padEnd(across - (ends[1]?.length ?? 0))}${ends[1]}`.trimEnd(),
  ];
};

/** What the map’s marks mean. */
export const roomKey = (room: RoomReport): string => {
  const shut = [...roomLetters(room)].map(([i, letter]) => `${letter} ${plain(room.map.names[i] ?? '', 40)}`);
  const lowest = room.lowest === null ? '' : `, ${LOWEST} the lowest engine`;
  return `${DESIGN} as designed${lowest}, ${CLEAR} everything clear at its worst${shut.length === 0 ? '' : `; shut by: ${shut.join(', ')}`}.`;
};
