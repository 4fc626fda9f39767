import type { Design } from '../design/index.js';
import { hullGap, type RoundHull } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { insideLine, type Plate, type Profile } from '../pan/index.js';
import { type Body, bodyNameAt, bodyOf } from './body.js';
import { type Clearance, fixedClearance } from './clearance.js';
import { deepestTurn } from './deepest-turn.js';
import { behindInside, plateSolids } from './inside-shell.js';
import { leastGap, NO_ROCK } from './least-gap.js';
import { hullOfShape } from './obstacle-hull.js';
import practice from './practice.json' with { type: 'json' };
import { staySolids } from './stay-solid.js';
import { passWords } from './words.js';

/** How deep the outside is taken to be solid behind the pan's inside, mm: deeper than anything pokes through. */
const BEHIND = 200;

/**
 * Main caps, girdle bolts and oil jets against the pan's inside, the baffles and the pickup tube; the tube's stay, which
 * hangs from the engine too, against pan and baffles.
 */
export const insideClearances = (
  design: Design,
  profile: Profile,
  plates: readonly Plate[],
): readonly Clearance[] => {
  const { inside: items } = design.engine;
  const stay = staySolids(design, profile);
  if (items.length === 0 && stay.length === 0) return [];
  const inside = insideLine(design, profile);
  const pan = bodyOf(behindInside(design, inside, BEHIND));
  const baffles = plates.length === 0 ? null : bodyOf(plates.flatMap(plateSolids));
  const rows = (name: string, hull: RoundHull): readonly Clearance[] => [
    bodyRow(name, hull, pan, 'pan', practice.sweepToPan),
    ...(baffles === null ? [] : [bodyRow(name, hull, baffles, 'baffles', practice.sweepToTray)]),
  ];
  return [
    ...items.flatMap(({ name, shape }) => {
      const hull = hullOfShape(shape);
      return [...rows(name, hull), ...tubeRow(design, name, hull)];
    }),
    ...nearestRows(stay.map(({ name, vertices }) => rows(name, { points: vertices, radius: 0 }))),
  ];
};

/** Of the same rows told of several pieces, each at the piece that is nearest. */
const nearestRows = (pieces: readonly (readonly Clearance[])[]): readonly Clearance[] =>
  (pieces[0] ?? []).map((_, i) =>
    pieces.map((rows) => rows[i]!).reduce((best, next) => (next.distance! < best.distance! ? next : best)),
  );

const bodyRow = (item: string, hull: RoundHull, body: Body, what: string, allowed: number): Clearance => {
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
  item: string,
  what: string,
  part: string,
  distance: number,
  allowed: number,
  at: Vec3,
): Clearance =>
  fixedClearance({
    name: `${item} to ${what}`,
    kind: 'crank',
    distance,
    allowed,
    between: [item, part],
    at,
    because: `The ${item} ${passWords(part, distance)}.`,
  });

const tubeRow = (design: Design, item: string, hull: RoundHull): readonly Clearance[] => {
  const { route, bore, wall } = design.pickup;
  const gaps = route.slice(1).map((b, i) => hullGap([route[i]!, b], hull.points));
  if (gaps.length === 0) return [];
  const near = gaps.reduce((best, next) => (next.distance < best.distance ? next : best));
  const distance = near.distance - hull.radius - bore / 2 - wall;
  return [rowOf(item, 'pickup tube', 'pickup tube', distance, practice.sweepToTray, near.onA)];
};
