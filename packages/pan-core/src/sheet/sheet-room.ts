import type { Design } from '../design/index.js';
import type { Vec2 } from '../numeric/index.js';
import { allowedTurns } from './grain-turn.js';
import type { Part } from './part.js';

/** The largest blank a sheet holds, along and across the drawing, the part turned as its grain allows, mm. */
export const sheetRoom = ({ shop }: Design, part: Pick<Part, 'folds' | 'flat'>): Vec2 => {
  const [length, width] = shop.sheet.map((side) => side - 2 * shop.edge) as [number, number];
  const rooms = allowedTurns(part).map((turn): Vec2 => (turn % 2 === 0 ? [length, width] : [width, length]));
  return rooms.reduce((best, room) => (beyond(part, room) < beyond(part, best) ? room : best));
};

/** How much larger a part is than the sheet has room for; negative where it fits, mm. */
export const beyondSheet = (design: Design, part: Pick<Part, 'folds' | 'flat'>): number =>
  beyond(part, sheetRoom(design, part));

const beyond = ({ flat }: Pick<Part, 'flat'>, room: Vec2): number =>
  Math.max(flat[0] - room[0], flat[1] - room[1]);
