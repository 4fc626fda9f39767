import type { Design } from '../design/index.js';
import type { FreeWish } from './freedom.js';
import { stepIndex } from './freedom-list.js';

/** A way to fit baffles: the entries of the file, and which of their places are to be chosen. */
export interface BaffleLayout {
  readonly words: string;
  readonly pieces: number;
  readonly baffles: readonly Readonly<Record<string, unknown>>[];
  readonly free: readonly FreeWish[];
}

/** Room kept to the sump's ends so that a torch reaches and a flap opens, mm (common practice, no source). */
const CLEAR = 40;
const WEEP = 4;
/** A door is a quarter of the width wide and stands this far up, so that its flap clears the floor, mm. */
const DOOR_UP = 8;
const DOOR_HEIGHT = 35;

/**
 * Layouts from the fewest pieces up: nothing; a lid; a wall with two doors that let oil to the mouth; both; a
 * lid and a wall on each side of the mouth. Walls keep a weep, so that the sump drains to its plug.
 */
export const baffleLayouts = (design: Design): readonly BaffleLayout[] => {
  const { floor, left, right } = design.pan;
  const step = stepIndex(floor);
  const [front, shallow] = floor[step] ?? [0, 0];
  const [rear] = floor[floor.length - 1] ?? [0];
  const deep = Math.max(...floor.slice(step + 1).map(([, down]) => down));
  const [mouth] = design.pickup.at;
  const half = design.pickup.mouth / 2 + 12;
  const width = Math.min(...left.map(([, y]) => y)) + Math.min(...right.map(([, y]) => y));
  const down = shallow + 0.25 * (deep - shallow);
  const thickness = design.pan.sheet.thickness;
  const lid = {
    name: 'lid',
    lid_down: round(down),
    rear: round((rear + mouth) / 2),
    front: round(front),
    fixed: 'bolted',
  };
  const wall = (name: string, at: number) => ({
    name,
    across_at: round(at),
    weep: WEEP,
    doors: [-1, 1].map((side) => ({
      size: [round(width / 4), DOOR_HEIGHT],
      y: round((side * width) / 4),
      up: DOOR_UP,
      lets_oil: at > mouth ? 'rearward' : 'forward',
    })),
  });
  const ahead = wall('front wall', (mouth + half + front - CLEAR) / 2);
  const behind = wall('rear wall', (mouth - half + rear + CLEAR) / 2);
  const wish = (what: string, from: number, to: number): FreeWish => ({
    what,
    from: round(from),
    to: round(to),
    step: 1,
  });
  const lidFree = [
    wish('lid depth', shallow + thickness + 2, deep - design.pickup.gap - 30),
    wish('lid rear', rear + 20, front - 60),
  ];
  const aheadFree = [wish('front wall place', mouth + half, front - CLEAR)];
  const behindFree = [wish('rear wall place', rear + CLEAR, mouth - half)];
  const fits = (free: readonly FreeWish[]): boolean => free.every(({ from, to }) => (from ?? 0) < (to ?? 0));
  const layouts: readonly BaffleLayout[] = [
    { words: 'no baffle', pieces: 0, baffles: [], free: [] },
    { words: 'a lid', pieces: 1, baffles: [lid], free: lidFree },
    { words: 'a door wall ahead of the mouth', pieces: 1, baffles: [ahead], free: aheadFree },
    { words: 'a door wall behind the mouth', pieces: 1, baffles: [behind], free: behindFree },
    {
      words: 'a lid and a door wall ahead',
      pieces: 2,
      baffles: [lid, ahead],
      free: [...lidFree, ...aheadFree],
    },
    {
      words: 'a lid and a door wall behind',
      pieces: 2,
      baffles: [lid, behind],
      free: [...lidFree, ...behindFree],
    },
    {
      words: 'a door wall on each side',
      pieces: 2,
      baffles: [ahead, behind],
      free: [...aheadFree, ...behindFree],
    },
    {
      words: 'a lid and a door wall on each side',
      pieces: 3,
      baffles: [lid, ahead, behind],
      free: [...lidFree, ...aheadFree, ...behindFree],
    },
  ];
  return layouts.filter(({ free }) => fits(free));
};

const round = (value: number): number => Math.round(value);
