import type { Design } from '../design/index.js';
import { distance2 } from '../geometry/index.js';
import { airBendRadius, openingFor, radiusOff, shortestAirBendLeg } from './air-bend.js';
import practice from './brake-practice.json' with { type: 'json' };
import { atLeast, atMost, type SheetFinding } from './finding.js';
import { usualSplit } from './flange-split.js';
import { foldOrder } from './fold-order.js';
import type { Part } from './part.js';
import { beyondSheet } from './sheet-room.js';
import { staysWhole } from './split-part.js';

/** What the user's own brake and sheet allow: longest fold, a free order of folds, parts that fit the sheet. */
export const brakeFindings = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => [
  ...longestFold(design, parts),
  ...orderFinding(design, parts),
  ...dieRadius(design, parts),
  ...fitsSheet(design, parts),
];

/** Shortest leg that rests on both shoulders of the die, mm; by thickness and radius where no die is told. */
export const shortestLegFor = ({ shop }: Design, thickness: number, radius: number): number =>
  shop.brake.die === null ? 3 * thickness + radius : shortestAirBendLeg(shop.brake.die);

/** Half the width of the punch, mm. */
export const punchHalf = ({ shop }: Design): number => (shop.brake.punch ?? practice.punch_mm) / 2;

const longestFold = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const { longest } = design.shop.brake;
  const all = parts.flatMap((part) =>
    part.folds.map((fold) => ({ part, fold, length: distance2(fold.from, fold.to) })),
  );
  if (longest === null || all.length === 0) return [];
  const worst = all.reduce((a, b) => (b.length > a.length ? b : a));
  return [
    atMost(design, {
      id: 'longest_fold',
      title: 'longest fold for the brake',
      value: worst.length,
      limit: longest,
      unit: 'mm',
      below: 'fail',
      because: `the ${worst.fold.name} bend of ${worst.part.name}, against shop.brake.longest`,
      try: (over) =>
        `Have it bent on a brake ${over.toFixed(0)} mm longer, cut ${worst.part.name} apart (pan.joints.split), or weld that corner (pan.joints).`,
    }),
  ];
};

/** A bend in the air takes its radius from the die, and the flat lengths were reckoned with the design's. */
const dieRadius = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const { die } = design.shop.brake;
  const { bendRadius } = design.pan.sheet;
  if (die === null || parts.every((part) => part.folds.length === 0)) return [];
  const left = airBendRadius(die);
  return [
    atMost(design, {
      id: 'die_radius',
      title: 'die’s radius against bend radius',
      value: Math.abs(left - bendRadius),
      limit: radiusOff(bendRadius),
      unit: 'mm',
      below: 'warn',
      because: `a V of ${die.toFixed(0)} mm leaves about ${left.toFixed(1)} mm inside when it bends in the air (press-brake table), and pan.sheet.bend_radius is ${bendRadius.toFixed(1)} mm`,
      try: () =>
        `Take a V of about ${openingFor(bendRadius).toFixed(0)} mm, or bend a test strip and write bend_radius: ${left.toFixed(1)} and what it gave as pan.joints.bend_test.`,
    }),
  ];
};

const orderFinding = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const half = punchHalf(design);
  const found = parts.flatMap((part) => {
    const order = foldOrder(part, half);
    return order === null || !Number.isFinite(order.room) ? [] : [{ part, ...order }];
  });
  if (found.length === 0) return [];
  const worst = found.reduce((a, b) => (b.room < a.room ? b : a));
  const punch = design.shop.brake.punch === null ? ', taken as common practice, no source' : '';
  return [
    atLeast(design, {
      id: 'fold_order',
      title: 'folds clear of the punch',
      value: worst.room,
      limit: half,
      unit: 'mm',
      below: 'warn',
      because:
        worst.fouls === null
          ? `${worst.part.name} in the order of 3-bench/folds.txt; half a straight punch${punch}`
          : `in every order sheet already folded meets the punch; of ${worst.part.name} first at the ${worst.fouls.name} bend (half a straight punch${punch})`,
      try: () =>
        `Bend "${worst.fouls?.name ?? ''}" by hand over a bar or under a cut-away punch, or weld that corner (pan.joints).`,
    }),
  ];
};

const fitsSheet = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const { sheet, edge } = design.shop;
  // Any flat plate serves as the strongback of a flange that is made of two because the plate at hand is short.
  const cut = parts.filter(({ name }) => name !== 'strongback' || design.pan.flange.split === null);
  const over = cut.map((part) => ({ part, value: beyondSheet(design, part) }));
  if (over.length === 0) return [];
  const worst = over.reduce((a, b) => (b.value > a.value ? b : a));
  const size = worst.part.flat.map((side) => side.toFixed(0)).join(' x ');
  return [
    atLeast(design, {
      id: 'part_on_sheet',
      title: 'room for the largest part on the sheet',
      value: -worst.value,
      limit: 0,
      unit: 'mm',
      below: 'fail',
      because:
        worst.value > 0
          ? `${worst.part.name} is ${size} mm flat and the sheet ${sheet.join(' x ')} mm with ${edge} mm of bare rim`
          : `the largest, ${worst.part.name}, fits the sheet of ${sheet.join(' x ')} mm`,
      try: () => sheetAdvice(design, worst.part),
    }),
  ];
};

const sheetAdvice = (design: Design, part: Part): string => {
  if (part.name === 'flange')
    return `Weld the flange of two pieces, pan.flange.split: {across_at: ${usualSplit(design).toFixed(0)}}, or write a larger sheet as shop.sheet.`;
  return staysWhole(design, part)
    ? 'Let it be cut apart: pan.joints.split keeps it whole; or write a larger sheet as shop.sheet.'
    : 'Buy a larger sheet and write it as shop.sheet.';
};
