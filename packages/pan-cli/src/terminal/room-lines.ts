import type { RoomReport, ShiftPlace, TiltRow } from 'pan-core';
import type { Screen } from '../commands/command.js';
import { blockText } from './job-card.js';
import { plain } from './plain.js';
import { quantity, sentence } from './quantity.js';
import { roomKey, roomMap } from './room-map.js';

type Words = (mm: number) => string;

/** A place of the engine from where the design has it: "12 mm back and 4 mm up". */
export const shiftWords = (
  { forward_mm, up_mm }: Pick<ShiftPlace, 'forward_mm' | 'up_mm'>,
  mm: Words,
): string => {
  const parts = [
    ...(Math.abs(forward_mm) < 0.05
      ? []
      : [`${mm(Math.abs(forward_mm))} ${forward_mm > 0 ? 'forward' : 'back'}`]),
    ...(Math.abs(up_mm) < 0.05 ? [] : [`${mm(Math.abs(up_mm))} ${up_mm > 0 ? 'up' : 'down'}`]),
  ];
  return parts.length === 0 ? 'where it is' : parts.join(' and ');
};

const standing = (room: RoomReport, mm: Words): string => {
  if (room.clear) return 'Everything clears where the engine is.';
  const { nearest, gives } = room;
  const within = `${mm(room.range_mm.forward[1])} fore and aft and ${mm(room.range_mm.up[1])} in height`;
  if (nearest !== null)
    return `Not where it is. The nearest place where everything clears is ${shiftWords(nearest, mm)}.`;
  const [least, ...more] = gives;
  const nothing = `No place within ${within} clears everything.`;
  if (least === undefined) return `${nothing} No single thing that gives way would help.`;
  const give = ({ obstacle, toward, by_mm }: RoomReport['gives'][number]): string =>
    obstacle === 'ground'
      ? `the pan ${mm(by_mm)} higher over the road (a shallower sump, a shorter plug)`
      : `the ${plain(obstacle, 60)} ${mm(by_mm)} ${toward}`;
  const others = more.slice(0, 2).map((one) => give(one));
  return `${nothing} It takes ${give(least)}, with the engine ${shiftWords(least, mm)}${others.length === 0 ? '' : `; or ${others.join('; or ')}`}.`;
};

/** What binds on each side, from where the engine is or from where there is most room. */
const sideWords = (room: RoomReport, mm: Words): string => {
  const { sides, roomiest, clear } = room;
  const sideOf = (toward: string) => sides.find((one) => one.toward === toward);
  const way = (toward: string): string => {
    const side = sideOf(toward);
    if (side === undefined) return '';
    return side.binds === null
      ? `${toward} the whole ${mm(side.by_mm)} looked at`
      : `${toward} ${mm(side.by_mm)} (${plain(side.binds, 60)})`;
  };
  const all = ['forward', 'rearward', 'up', 'down'].map(way).join(', ');
  if (clear) return `It can go ${all}.`;
  if (roomiest === null) return '';
  return `Most room all round: ${shiftWords(roomiest, mm)}, everything ${mm(roomiest.spare_mm)} clearer than wanted. From there it can go ${all}.`;
};

/** Nearer to the end of what was looked at than the search tells apart, mm. */
const AT_END = 0.6;

const extremes = ({ lowest, highest, range_mm }: RoomReport, mm: Words): string => {
  if (lowest === null || highest === null) return '';
  const limit = (place: ShiftPlace): string =>
    range_mm.up.some((end) => Math.abs(place.up_mm - end) < AT_END)
      ? `${shiftWords(place, mm)}, as far as was looked`
      : `${shiftWords(place, mm)}, where ${plain(place.binds, 60)} binds`;
  const [low, high] = [plain(lowest.binds, 60), plain(highest.binds, 60)];
  const trade =
    highest.up_mm - lowest.up_mm < 20
      ? ` All the height there is between them is ${mm(highest.up_mm - lowest.up_mm)}: what ${low} gains, ${high} loses.`
      : '';
  return `The lowest engine is ${limit(lowest)}. The highest is ${limit(highest)}.${trade}`;
};

const tiltWords = ({ nose_up_deg, clear, here, lowest }: TiltRow, mm: Words): string => {
  const now = clear ? 'clears where it is' : `is ${mm(-here.spare_mm)} short at ${plain(here.binds, 60)}`;
  const low =
    lowest === null
      ? 'no place in the range clears'
      : `its lowest is ${shiftWords(lowest, mm)} (${plain(lowest.binds, 60)})`;
  return `Nose up ${nose_up_deg.toFixed(1)}°: it ${now}; ${low}.`;
};

/** Room to move in words and as a map. */
export const roomLines = (room: RoomReport, { width, units }: Screen): string[] => {
  const mm: Words = (value) =>
    units === 'mm' && Math.abs(value) < 9.95 ? `${value.toFixed(1)} mm` : quantity(value, 'mm', units);
  const say = (text: string): string[] => (text === '' ? [] : blockText('', text, width));
  return [
    ...say(standing(room, mm)),
    ...(room.sides.length === 0 ? [] : say(sideWords(room, mm))),
    ...say(extremes(room, mm)),
    ...room.tilts.flatMap((tilt) => say(tiltWords(tilt, mm))),
    ...(room.proved ? [] : say('The search stopped early: lower or higher places may be clear too.')),
    '',
    ...roomMap(room, units),
    '',
    ...say(roomKey(room)),
    ...say(sentence(room.guarantee, units)),
  ];
};
