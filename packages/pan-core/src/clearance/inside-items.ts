import type { Design, Item } from '../design/index.js';
import { hullGap, type RoundHull } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import type { OutsideLine, Plate } from '../pan/index.js';
import { type Body, bodyNameAt, bodyOf } from './body.js';
import { type Clearance, fixedClearance } from './clearance.js';
import { deepestTurn } from './deepest-turn.js';
import { behindInside, plateSolids } from './inside-shell.js';
import { leastGap, NO_ROCK } from './least-gap.js';
import { hullOfShape } from './obstacle-hull.js';
import practice from './practice.json' with { type: 'json' };
import { passWords } from './words.js';

/** How deep the outside is taken to be solid behind the pan's inside, mm: deeper than anything pokes through. */
const BEHIND = 200;

/** Main caps, girdle bolts and oil jets against the pan's inside, the baffles and the pickup tube. */
export const insideClearances = (
  design: Design,
  inside: OutsideLine,
  plates: readonly Plate[],
): readonly Clearance[] => {
  const { inside: items } = design.engine;
  if (items.length === 0) return [];
  const pan = bodyOf(behindInside(design, inside, BEHIND));
  const baffles = plates.length === 0 ? null : bodyOf(plates.flatMap(plateSolids));
  return items.flatMap((item) => {
    const hull = hullOfShape(item.shape);
    return [
      bodyRow(item, hull, pan, 'pan', practice.sweepToPan),
      ...(baffles === null ? [] : [bodyRow(item, hull, baffles, 'baffles', practice.sweepToTray)]),
      ...tubeRow(design, item, hull),
    ];
  });
};

const bodyRow = (item: Item, hull: RoundHull, body: Body, what: string, allowed: number): Clearance => {
  const gap = leastGap(body, hull, NO_ROCK);
  const deep = gap.meets ? deepestTurn(body, hull, NO_ROCK) : null;
  const part =
    deep === null
      ? (bodyNameAt(body, gap.onBody, gap.toward) ?? body.solids[gap.solid]!.name)
      : body.solids[deep.facet?.from.solid ?? gap.solid]!.name;
  const at = deep?.at ?? gap.onBody;
  return rowOf(item, what, part, deep === null ? gap.distance : -deep.depth, allowed, at);
};

const rowOf = (
  item: Item,
  what: string,
  part: string,
  distance: number,
  allowed: number,
  at: Vec3,
): Clearance =>
  fixedClearance({
    name: `${item.name} to ${what}`,
    kind: 'crank',
    distance,
    allowed,
    between: [item.name, part],
    at,
    because: `The ${item.name} ${passWords(part, distance)}.`,
  });

const tubeRow = (design: Design, item: Item, hull: RoundHull): readonly Clearance[] => {
  const { route, bore, wall } = design.pickup;
  const gaps = route.slice(1).map((b, i) => hullGap([route[i]!, b], hull.points));
  if (gaps.length === 0) return [];
  const near = gaps.reduce((best, next) => (next.distance < best.distance ? next : best));
  const distance = near.distance - hull.radius - bore / 2 - wall;
  return [rowOf(item, 'pickup tube', 'pickup tube', distance, practice.sweepToTray, near.onA)];
};
