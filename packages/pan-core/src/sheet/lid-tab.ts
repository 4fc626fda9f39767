import type { Design, Lid, Side } from '../design/index.js';
import type { Vec2 } from '../numeric/index.js';
import { halfWidthAt, lidPlan, shares, sideSign } from '../pan/index.js';
import { angleStrip, stripPart } from './angle-strip.js';
import practice from './door-practice.json' with { type: 'json' };
import { mediumHole } from './flange-hole.js';
import type { Part, RoundHole } from './part.js';

/** Height of a tab’s foot on the pan’s wall, mm. */
export const TAB_FOOT = practice.tab_foot_mm;

/** One tab: where it stands, and how far from the wall’s inside its bolt is. */
export interface TabPlace {
  readonly side: Side;
  readonly x: number;
  /** From the middle of the pan to the wall's inside. */
  readonly wall: number;
  /** From the wall to the lid’s edge. */
  readonly gap: number;
  readonly bolt: Vec2;
  /** From the wall to the bolt. */
  readonly reach: number;
}

/** Tabs evenly along both sides, their bolts clear of the lid’s edge and of the tab’s bend. */
export const tabPlaces = (design: Design, lid: Lid): readonly TabPlace[] => {
  const { tabs } = lid;
  if (tabs === undefined) return [];
  const plan = lidPlan(design, lid);
  return (['left', 'right'] as const).flatMap((side) =>
    shares(plan.rear, plan.front, tabs.eachSide).map((x): TabPlace => {
      const wall = halfWidthAt(design.pan[side], x);
      const gap = Math.max(0, wall - sideSign(side) * (side === 'left' ? plan.left(x) : plan.right(x)));
      const edge = practice.tab_edge_diameters * tabs.size;
      // 2.5 t + R from a bend’s far face, as for any hole beside a bend.
      const clear = 3.5 * lid.thickness + design.pan.sheet.bendRadius + mediumHole(tabs.size) / 2 + 0.5;
      const reach = Math.max(gap + edge, clear);
      return { side, x, wall, gap, reach, bolt: [x, sideSign(side) * (wall - reach)] };
    }),
  );
};

/** Holes that a lid is hung by: one over each tab, and one for each stud. */
export const mountHoles = (design: Design, lid: Lid): readonly RoundHole[] => [
  ...tabPlaces(design, lid).map(({ bolt }) => ({
    at: bolt,
    diameter: mediumHole(lid.tabs?.size ?? 0),
    what: `M${lid.tabs?.size} bolt to its tab`,
  })),
  ...(lid.studs?.at ?? []).map((at) => ({
    at,
    diameter: mediumHole(lid.studs?.size ?? 0),
    what: `M${lid.studs?.size} stud of the engine`,
  })),
];

/** Tabs that share a drawing, mm. */
export interface TabKind {
  readonly name: string;
  /** Length of the shelf over the outside of the bend. */
  readonly shelf: number;
  readonly width: number;
  readonly places: readonly TabPlace[];
}

/** The tabs of a lid; those that reach equally far are of a kind. */
export const tabKinds = (design: Design, lid: Lid): readonly TabKind[] => {
  const places = tabPlaces(design, lid);
  const edge = practice.tab_edge_diameters * (lid.tabs?.size ?? 0);
  const reaches = [...new Set(places.map(({ reach }) => Math.round(reach)))].sort((a, b) => a - b);
  return reaches.map((kind, i) => {
    const alike = places.filter(({ reach }) => Math.round(reach) === kind);
    return {
      name: reaches.length === 1 ? `${lid.name} tab` : `${lid.name} tab ${i + 1}`,
      shelf: Math.max(...alike.map((p) => p.reach)) + edge,
      width: Math.max(practice.tab_width_mm, 2 * edge),
      places: alike,
    };
  });
};

/** A drawing for each kind of a lid's tabs. */
export const tabParts = (design: Design, lid: Lid): readonly Part[] =>
  tabKinds(design, lid).map((kind) => tabPart(design, lid, kind));

const tabPart = (design: Design, lid: Lid, { name, shelf, width, places }: TabKind): Part => {
  const size = lid.tabs?.size ?? 0;
  const edge = practice.tab_edge_diameters * size;
  const strip = angleStrip(design, lid.thickness, 'tab', {
    width,
    legs: [TAB_FOOT, shelf],
    measured: 'outside',
    angle: Math.PI / 2,
  });
  return stripPart(design, lid.thickness, strip, {
    name,
    what: `Carries "${lid.name}": foot on the pan’s side, shelf under the edge.`,
    quantity: places.length,
    holes: [
      { at: [strip.length - edge, width / 2], diameter: mediumHole(size), what: `M${size} bolt, nut below` },
    ],
    notes: [
      `Foot ${TAB_FOOT} mm and shelf ${shelf.toFixed(1)} mm, both over the outside of the bend; K ${strip.k}.`,
      'Weld the nut under the shelf first; bolt the tabs to the plate, offer all up, tack, then weld with the plate out.',
      `Shelf’s top ${lid.down} mm below the rail, foot downward, at ${placeWords(places)}.`,
    ],
  });
};

const placeWords = (alike: readonly TabPlace[]): string =>
  (['left', 'right'] as const)
    .map((side) => ({ side, xs: alike.filter((p) => p.side === side).map(({ x }) => x.toFixed(0)) }))
    .filter(({ xs }) => xs.length > 0)
    .map(({ side, xs }) => `x ${xs.join(', ')} ${side}`)
    .join('; ');
