import { type Design, findMaterial, smallestBendRadius } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Panel, Profile } from '../pan/index.js';
import { bendRule } from './bend-rule.js';
import { brakeFindings, shortestLegFor } from './brake-finding.js';
import { bungFindings } from './bung-finding.js';
import { FLAP_LAND } from './door-head.js';
import { atLeast, type SheetFinding } from './finding.js';
import { flangeFindings } from './flange-finding.js';
import { cornersInBend, holeToBend, shortestLeg } from './fold-reach.js';
import type { Fold, Part, RoundHole } from './part.js';
import { shopFindings } from './shop-finding.js';
import { splitFindings } from './split-finding.js';
import { mountFindings, tabFindings } from './tab-finding.js';

/**
 * Everything the sheet has to say about a design, as rows for its checks.
 *
 * @param panels the pan’s inside faces, to say how far a bung lies off them; may be left out
 */
export const sheetFindings = (
  design: Design,
  profile: Profile,
  parts: readonly Part[],
  panels: readonly Panel[] = [],
): readonly SheetFinding[] =>
  freeze([
    structural(design),
    radius(design),
    ...tables(design),
    ...legs(design, parts),
    ...holesAtBends(design, parts),
    ...cutsInBends(parts),
    ...brakeFindings(design, parts),
    ...splitFindings(design, parts),
    ...flangeFindings(design, profile),
    ...smallestHole(design, parts),
    ...wingEnds(design, profile),
    ...flaps(design),
    ...tabFindings(design, profile),
    ...mountFindings(design, parts),
    ...bungFindings(design, parts, panels),
    cutLines(parts),
  ]);

const structural = (design: Design): SheetFinding => ({
  id: 'structural',
  title: 'not a structural pan',
  status: design.pan.structural ? 'fail' : 'pass',
  value: null,
  limit: null,
  unit: '',
  because: design.pan.structural
    ? 'the old pan ties the block to the gearbox; a sheet pan would bend and crack, and the block may'
    : 'the pan carries oil and nothing else',
  try: design.pan.structural
    ? 'Refused as a replacement: keep a cast pan, or have an engineer answer for brackets that carry the gearbox without it (torque reaction and the gearbox’s overhung mass in bending; stiffness against the clutch’s alignment and first bending of engine and gearbox as one beam; fatigue at the bolts and the block’s own thread pull-out; who signs), then say structural: false.'
    : '',
});

const radius = (design: Design): SheetFinding => {
  const { material, thickness, bendRadius } = design.pan.sheet;
  const row = findMaterial(material);
  const least = row === null ? (design.limits.bend_radius ?? null) : smallestBendRadius(row, thickness);
  if (least === null) {
    return {
      id: 'bend_radius',
      title: 'inside bend radius',
      status: 'warn',
      value: bendRadius,
      limit: null,
      unit: 'mm',
      because: `the table of smallest radii does not have ${material}`,
      try: 'Ask the sheet’s seller, bend a test strip across the grain, and give limits.bend_radius.',
    };
  }
  return atLeast(design, {
    id: 'bend_radius',
    title: 'inside bend radius',
    value: bendRadius,
    limit: least,
    unit: 'mm',
    below: 'fail',
    because: `${material} at ${thickness} mm cracks at a tighter bend (table row of the next thickness up)`,
    try: (short) =>
      `Bend at ${(bendRadius + short).toFixed(1)} mm or more, or take a softer or thinner sheet.`,
  });
};

const tables = (design: Design): readonly SheetFinding[] =>
  bendRule(design).guessed
    ? [
        {
          id: 'bend_table',
          title: 'bend allowance known',
          status: 'warn',
          value: null,
          limit: null,
          unit: '',
          because: `the bend tables do not have ${design.pan.sheet.material}; a medium material was taken`,
          try: 'Bend a strip and give pan.joints.bend_test: flat length and both legs.',
        },
      ]
    : [];

const legs = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const all = parts.flatMap((part) =>
    part.folds.map((fold) => ({ part, fold, value: shortestLeg(part, fold) })),
  );
  const need = (p: Part, f: Fold): number => shortestLegFor(design, p.thickness, f.radius);
  if (all.length === 0) return [];
  const worst = all.reduce((a, b) =>
    b.value - need(b.part, b.fold) < a.value - need(a.part, a.fold) ? b : a,
  );
  return [
    atLeast(design, {
      id: 'shortest_flange',
      title: 'shortest leg at a bend',
      value: worst.value,
      limit: need(worst.part, worst.fold),
      unit: 'mm',
      below: 'fail',
      because: `the ${worst.fold.name} bend of ${worst.part.name}: a shorter leg falls into the brake’s die (${
        design.shop.brake.die === null ? '3t + R' : '0.77 of the die’s opening'
      }, common practice)`,
      try: (short) => `Make that leg ${short.toFixed(1)} mm longer, or weld the corner (pan.joints.welded).`,
    }),
  ];
};

const holesAtBends = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const all = parts.flatMap((part) =>
    part.holes.flatMap((hole) =>
      part.folds.map((fold) => ({
        part,
        hole,
        fold,
        value: holeToBend(fold, hole.at, hole.diameter) + fold.radius,
      })),
    ),
  );
  if (all.length === 0) return [];
  const need = (p: Part, f: Fold): number => 2.5 * p.thickness + f.radius;
  const worst = all.reduce((a, b) =>
    b.value - need(b.part, b.fold) < a.value - need(a.part, a.fold) ? b : a,
  );
  return [
    atLeast(design, {
      id: 'hole_to_bend',
      title: 'hole to bend',
      value: worst.value,
      limit: need(worst.part, worst.fold),
      unit: 'mm',
      below: 'warn',
      because: `${worst.hole.what} in ${worst.part.name}: nearer the ${worst.fold.name} bend’s far face the hole is pulled oval (2.5t + R, common practice)`,
      try: (short) => `Move it ${short.toFixed(1)} mm away, or cut it after bending.`,
    }),
  ];
};

/** A cut that ends inside a bend zone tears open when the sheet is folded. */
const cutsInBends = (parts: readonly Part[]): readonly SheetFinding[] => {
  const folded = parts.filter((p) => p.folds.length > 0);
  if (folded.length === 0) return [];
  const found = folded.flatMap((part) =>
    part.folds.flatMap((fold) => (cornersInBend(part, fold) > 0 ? [{ part, fold }] : [])),
  );
  const first = found[0];
  return [
    {
      id: 'cut_in_bend',
      title: 'cuts that end in a bend',
      status: first === undefined ? 'pass' : 'warn',
      value: found.length,
      limit: 0,
      unit: '1',
      because:
        first === undefined
          ? 'no opening has a corner in a bend zone'
          : `an opening of ${first.part.name} has a corner in its ${first.fold.name} bend, where the sheet tears`,
      try:
        first === undefined
          ? ''
          : 'Move the notch off the bend, or drill a relief as wide as the sheet is thick there.',
    },
  ];
};

/** Plate from this thickness on has its small holes drilled as a matter of course, mm (common practice, no source). */
const PLATE = 6;

/**
 * A laser cuts no clean hole narrower than the metal is thick (common practice). Thin sheet is cut in one go, so a
 * hole that must be drilled after is worth a warning; plate such as a flange goes to the drill anyway.
 */
const smallestHole = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const all = parts.flatMap((part) => part.holes.map((hole: RoundHole) => ({ part, hole })));
  if (all.length === 0) return [];
  const own = design.limits.smallest_hole !== undefined;
  const tightest = (of: typeof all) =>
    of.reduce((a, b) => (b.hole.diameter / b.part.thickness < a.hole.diameter / a.part.thickness ? b : a));
  const drilled = all.filter(({ part, hole }) => part.thickness >= PLATE && hole.diameter < part.thickness);
  const cut = own ? all : all.filter((one) => !drilled.includes(one));
  const worst = cut.length === 0 ? null : tightest(cut);
  if (drilled.length > 0 && !own && (worst === null || worst.hole.diameter >= worst.part.thickness)) {
    const { part, hole } = tightest(drilled);
    const because = `${hole.what} in ${part.name}, ${part.thickness} mm plate: narrower than it is thick, so drilled or cut by water, not by laser`;
    const row = { id: 'smallest_hole', title: 'smallest hole', unit: 'mm', limit: null, try: '' };
    return [{ ...row, status: 'pass', value: hole.diameter, because }];
  }
  return worst === null ? [] : [laserHole(design, worst.part, worst.hole)];
};

const laserHole = (design: Design, part: Part, hole: RoundHole): SheetFinding =>
  atLeast(design, {
    id: 'smallest_hole',
    title: 'smallest hole',
    value: hole.diameter,
    limit: part.thickness,
    unit: 'mm',
    below: 'warn',
    because: `${hole.what} in ${part.name}: a laser cuts no clean hole narrower than the sheet is thick (common practice)`,
    try: () => 'Have it marked and drill it.',
  });

/** A wing must not end inside a folded corner's bend: its flat floor would not follow the arc. */
const wingEnds = (design: Design, profile: Profile): readonly SheetFinding[] => {
  if (design.pan.wings.length === 0) return [];
  const all = design.pan.wings.flatMap((wing) =>
    profile.path.flatMap((s) => {
      if (s.kind !== 'arc') return [];
      const [lo, hi] = [Math.min(s.from[0], s.to[0]), Math.max(s.from[0], s.to[0])];
      return [wing.rear, wing.front].map((x) => ({ wing, value: Math.max(lo - x, x - hi) }));
    }),
  );
  if (all.length === 0) return [];
  const worst = all.reduce((a, b) => (b.value < a.value ? b : a));
  return [
    atLeast(design, {
      id: 'wing_end',
      title: 'wing end clear of bends',
      value: worst.value,
      limit: 0,
      unit: 'mm',
      below: 'warn',
      because: `an end of the wing "${worst.wing.name}" against the nearest bend of the floor`,
      try: (short) => `Move that end ${short.toFixed(1)} mm along x, off the bend, or fit its cap by hand.`,
    }),
  ];
};

const flaps = (design: Design): readonly SheetFinding[] => {
  const doors = design.baffles.flatMap((b) =>
    b.kind === 'wall' ? b.doors.map((door) => ({ wall: b, door })) : [],
  );
  if (doors.length === 0) return [];
  const worst = doors.reduce((a, b) => (b.door.up < a.door.up ? b : a));
  return [
    atLeast(design, {
      id: 'door_flap',
      title: 'door flap clear of the floor',
      value: worst.door.up - FLAP_LAND,
      limit: 1,
      unit: 'mm',
      below: 'warn',
      because: `the flap covers its opening by ${FLAP_LAND} mm all round; in "${worst.wall.name}" it would drag on the floor`,
      try: (short) => `Raise that door by ${short.toFixed(1)} mm (up).`,
    }),
  ];
};

const cutLines = (parts: readonly Part[]): SheetFinding => {
  // Small holes have a row of their own.
  const found = parts.flatMap(shopFindings).filter((f) => f.id !== 'small-hole');
  const faults = found.filter((f) => f.severity === 'fault');
  const shown = faults[0] ?? found[0];
  return {
    id: 'cut_lines',
    title: 'cut lines closed and clear',
    status: faults.length > 0 ? 'fail' : found.length > 0 ? 'warn' : 'pass',
    value: found.length,
    limit: 0,
    unit: '1',
    because: shown?.words ?? 'every cut is a closed loop and none meets another',
    try: faults.length > 0 ? 'Move the cuts apart: a cutter cannot follow these.' : '',
  };
};
