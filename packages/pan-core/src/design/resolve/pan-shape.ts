import type { Joints, Notch, PanShape, PartSplit, Point2, RailHole, Sheet, Wing } from '../design.js';
import type { DesignKeys } from '../keys/design-keys.js';
import { findMaterial, type Material, smallestBendRadius } from '../material.js';
import { boxOf } from './engine.js';
import { resolveFlange } from './flange.js';
import type { Notes } from './notes.js';

type PanKeys = DesignKeys['pan'];

export const resolvePanShape = (keys: PanKeys, railHoles: readonly RailHole[], notes: Notes): PanShape => {
  const sheet = resolveSheet(keys.sheet, notes);
  const { left, right } = resolveWidths(keys);
  return {
    sheet,
    floor: keys.floor_inside,
    left,
    right,
    wings: (keys.wings ?? []).map(resolveWing),
    notches: (keys.notches ?? []).map(resolveNotch),
    flange: resolveFlange(keys.flange, sheet, railHoles, notes),
    structural: resolveStructural(keys.structural, notes),
    joints: resolveJoints(keys, notes),
    sumpFrom: keys.sump_from ?? null,
  };
};

const resolveSheet = (keys: PanKeys['sheet'], notes: Notes): Sheet => {
  const path = ['pan', 'sheet'];
  const material = notes.takeWord(keys?.material, [...path, 'material'], 'sheet material');
  const row = findMaterial(material) as Material;
  const usual = row.metal === 'aluminium' ? 'sheet aluminium' : 'sheet steel';
  const thickness = notes.take(keys?.thickness, [...path, 'thickness'], 'length', usual);
  if (keys?.bend_radius !== undefined) return { material, thickness, bendRadius: keys.bend_radius };
  const bendRadius = Math.ceil(smallestBendRadius(row, thickness) * 2) / 2;
  const last = row.minimumRadius.at(-1)?.[0] ?? 0;
  const beyond = thickness > last ? ', carried on in proportion past its thickest row' : '';
  notes.assume(
    [...path, 'bend_radius'],
    `${bendRadius} mm`,
    `smallest inside radius for the material and thickness in a handbook table${beyond}, to the next 0.5 mm`,
  );
  return { material, thickness, bendRadius };
};

/** Stations by rising x; a constant width is written at both ends of the floor. */
const resolveWidths = ({
  width_inside,
  left,
  right,
  floor_inside,
}: PanKeys): Pick<PanShape, 'left' | 'right'> => {
  if (width_inside !== undefined) {
    const rear = floor_inside.at(-1)?.[0] ?? 0;
    const front = floor_inside[0]?.[0] ?? 0;
    const both: readonly Point2[] = [
      [rear, width_inside / 2],
      [front, width_inside / 2],
    ];
    return { left: both, right: both };
  }
  const rising = (stations: readonly Point2[]): readonly Point2[] =>
    [...stations].sort((a, b) => a[0] - b[0]);
  return { left: rising(left ?? []), right: rising(right ?? []) };
};

type WingKeys = NonNullable<PanKeys['wings']>[number];

const bothEnds = (given: number | { readonly rear: number; readonly front: number }) =>
  typeof given === 'number' ? { rear: given, front: given } : { rear: given.rear, front: given.front };

const resolveWing = (keys: WingKeys, index: number, all: readonly WingKeys[]): Wing => ({
  name: keys.name ?? wingName(keys.side, index, all),
  side: keys.side,
  rear: keys.rear,
  front: keys.front,
  topDown: bothEnds(keys.top_down),
  topFall: keys.top_fall ?? 0,
  beyondWall: bothEnds(keys.beyond_wall),
});

/** "right wing", or "right wing 2" where a name before it is the same. */
const wingName = (side: string, index: number, all: readonly WingKeys[]): string => {
  const base = `${side} wing`;
  const given = all.map(({ name }) => name);
  const earlier = all.slice(0, index).filter((wing) => wing.side === side && wing.name === undefined).length;
  let number = earlier + 1;
  const name = (): string => (number === 1 ? base : `${base} ${number}`);
  while (given.includes(name())) number++;
  return name();
};

const resolveNotch = ({ name, box, wedge }: NonNullable<PanKeys['notches']>[number]): Notch => {
  if (wedge !== undefined) return { kind: 'wedge', name, ...wedge };
  const { min, max } = boxOf(box as Parameters<typeof boxOf>[0]);
  return { kind: 'box', name, min, max };
};

const resolveStructural = (given: boolean | undefined, notes: Notes): boolean => {
  if (given !== undefined) return given;
  notes.takeWord(undefined, ['pan', 'structural'], 'structural');
  return false;
};

const resolveJoints = ({ joints, floor_inside }: PanKeys, notes: Notes): Joints => {
  const welded = (joints?.welded ?? []).map(([x, down]) =>
    floor_inside.findIndex((point) => point[0] === x && point[1] === down),
  );
  const test = joints?.bend_test;
  return {
    welded: [...new Set(welded)].sort((a, b) => a - b),
    bendTest: test === undefined ? null : { flat: test.flat, legs: test.legs },
    allowance: notes.takeWord(joints?.allowance, ['pan', 'joints', 'allowance'], 'bend rule'),
    fold: joints?.fold ?? [],
    weld: joints?.weld ?? [],
    split: resolveSplit(joints?.split),
  };
};

/** Entries that only forbid a cut go apart from those that ask for one. */
const resolveSplit = (given: NonNullable<PanKeys['joints']>['split']): PartSplit => {
  if (given === undefined) return { usual: true, whole: [], seams: [] };
  if (given === 'never') return { usual: false, whole: [], seams: [] };
  return {
    usual: true,
    whole: given.flatMap(({ part, across_at, lengthwise_at }) =>
      across_at === undefined && lengthwise_at === undefined ? [part] : [],
    ),
    seams: given.flatMap(({ part, across_at, lengthwise_at, name }) => {
      const at = across_at ?? lengthwise_at;
      const way = across_at === undefined ? ('lengthwise' as const) : ('across' as const);
      return at === undefined ? [] : [{ part, way, at, name: name ?? null }];
    }),
  };
};
