import type { Design } from '../design/index.js';
import { distance2, type Path, pathDistance, type Segment, subtract2, unit2 } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import type { Profile } from '../pan/index.js';
import { atLeast, type SheetFinding } from './finding.js';
import { type FlangeHole, flangeHoles } from './flange-hole.js';
import { narrowestLand } from './flange-line.js';
import { flangeJoints } from './flange-piece.js';
import { flangeOpening, flangeOutline } from './flange-shape.js';

/** A pattern of holes turned over goes on the block when it misses by less than this, mm: common practice, no source. */
const FITS_TURNED = 2;
/** Share of the flange's thickness that stays under a groove: common practice, no source. */
const GROOVE_FLOOR = 0.5;
/** Bolts that hold a flange down while it is welded, at least: common practice, no source. */
const CLAMPS = 4;
/** Sine of the turn from which a vertex counts as a corner. */
const CORNER = 0.1;

/** Questions that only a flange with the thing in question is asked: dowels, groove, joint, later holes. */
export const flangeDetailFindings = (design: Design, profile: Profile): readonly SheetFinding[] => {
  const holes = flangeHoles(design);
  return [
    ...hand(design, holes),
    ...groove(design, profile, holes),
    ...joint(design, profile, holes),
    ...later(holes),
  ];
};

/** With dowels given, whether a flange made from a mirrored rail would go on the block all the same. */
const hand = (design: Design, holes: readonly FlangeHole[]): readonly SheetFinding[] => {
  if (design.pan.flange.dowels.length === 0) return [];
  const { value, hole } = missTurned(holes);
  return [
    atLeast(design, {
      id: 'flange_hand',
      title: 'flange fits one way only',
      value,
      limit: FITS_TURNED,
      unit: 'mm',
      below: 'warn',
      because:
        value < FITS_TURNED
          ? 'turned over about the crank’s line every bolt and dowel hole still falls on another'
          : `turned over, the ${hole.what} at ${words(hole.at)} is ${value.toFixed(1)} mm from any of its kind`,
      try: () =>
        'Nothing in the holes tells a mirrored rail: punch “block side, front” on the flange, and measure the dowels from the same side again.',
    }),
  ];
};

/** The hole that is farthest from one of its kind when the flange is turned over, y to −y. */
export const missTurned = (
  holes: readonly FlangeHole[],
): { readonly value: number; readonly hole: FlangeHole } =>
  holes
    .map((hole) => {
      const kin = holes.filter(({ kind, size }) => kind === hole.kind && size === hole.size);
      const value = Math.min(...kin.map(({ at }) => distance2(at, [hole.at[0], -hole.at[1]])));
      return { value, hole };
    })
    .reduce((a, b) => (b.value > a.value ? b : a));

const words = ([x, y]: Vec2): string => `x ${x.toFixed(0)}, y ${y.toFixed(0)} mm`;

const groove = (design: Design, profile: Profile, holes: readonly FlangeHole[]): readonly SheetFinding[] => {
  const { groove: cut, thickness } = design.pan.flange;
  if (cut === null) return [];
  return [
    atLeast(design, {
      id: 'groove_land',
      title: 'land beside the groove',
      value: (narrowestLand(design, profile, holes) - cut.width) / 2,
      limit: cut.depth,
      unit: 'mm',
      below: 'fail',
      because: `a groove ${cut.width} mm wide in the middle of the narrowest land; its walls at least as thick as it is deep (common practice)`,
      try: (short) => `Make it ${(2 * short).toFixed(1)} mm narrower, or leave it out and lay a plain bead.`,
    }),
    atLeast(design, {
      id: 'groove_floor',
      title: 'metal under the groove',
      value: thickness - cut.depth,
      limit: GROOVE_FLOOR * thickness,
      unit: 'mm',
      below: 'warn',
      because: `half of the flange’s ${thickness} mm stays under it (common practice)`,
      try: (short) => `Mill it ${short.toFixed(1)} mm less deep.`,
    }),
  ];
};

/** A joint is a weld right through: no bolt may sit on it, and a corner beside it would crack. */
const joint = (design: Design, profile: Profile, holes: readonly FlangeHole[]): readonly SheetFinding[] => {
  const { split, thickness } = design.pan.flange;
  if (split === null) return [];
  const stretches = flangeJoints(design, profile);
  if (stretches.length === 0) {
    return [
      {
        id: 'flange_joint',
        title: 'flange joint',
        status: 'fail',
        value: split.at,
        limit: null,
        unit: 'mm',
        because: `the joint at ${split.at} mm does not meet the flange`,
        try: 'Give pan.flange.split a place within the flange, or leave it out.',
      },
    ];
  }
  const corners = [flangeOutline(design), flangeOpening(design, profile)].flatMap(cornersOf);
  const to = (p: Vec2): number => pathDistance(stretches, p);
  const row = { limit: thickness, unit: 'mm', below: 'fail' } as const;
  const nearest = (points: readonly Vec2[]) => points.reduce((a, b) => (to(b) < to(a) ? b : a));
  const corner = corners.length === 0 ? null : nearest(corners);
  const hole = holes.length === 0 ? null : holes.reduce((a, b) => (edge(b, to) < edge(a, to) ? b : a));
  return [
    ...(hole === null
      ? []
      : [
          atLeast(design, {
            ...row,
            id: 'joint_hole',
            title: 'flange joint to hole',
            value: edge(hole, to),
            because: `from the joint to the edge of the hole at ${words(hole.at)}; at least the plate’s thickness (common practice)`,
            try: (short) => `Move the joint ${short.toFixed(1)} mm or more away from that hole.`,
          }),
        ]),
    ...(corner === null
      ? []
      : [
          atLeast(design, {
            ...row,
            id: 'joint_corner',
            title: 'flange joint to corner',
            value: to(corner),
            because: `from the joint to the corner at ${words(corner)}; at least the plate’s thickness (common practice)`,
            try: (short) => `Move the joint ${short.toFixed(1)} mm or more away from that corner.`,
          }),
        ]),
  ];
};

const edge = ({ at, diameter }: FlangeHole, to: (p: Vec2) => number): number => to(at) - diameter / 2;

/** Vertices where a path turns, and both ends of its rounded corners. */
const cornersOf = (path: Path): readonly Vec2[] =>
  path.flatMap((s, i) => {
    const next = path[(i + 1) % path.length] as Segment;
    if (s.kind === 'arc') return [s.from, s.to];
    if (next.kind === 'arc') return [];
    const [u, v] = [direction(s), direction(next)];
    return Math.abs(u[0] * v[1] - u[1] * v[0]) > CORNER ? [s.to] : [];
  });

const direction = ({ from, to }: Segment): Vec2 => unit2(subtract2(to, from));

/** A flange whose holes all come later cannot be bolted to its strongback. */
const later = (holes: readonly FlangeHole[]): readonly SheetFinding[] => {
  if (!holes.some((hole) => hole.later)) return [];
  const left = holes.filter((hole) => hole.kind === 'bolt' && !hole.later).length;
  return [
    {
      id: 'clamp_holes',
      title: 'bolts that clamp the flange',
      status: left >= CLAMPS ? 'pass' : 'warn',
      value: left,
      limit: CLAMPS,
      unit: '1',
      because: `${left} bolt holes are cut before welding; the others are only marked and drilled after`,
      try:
        left >= CLAMPS
          ? ''
          : 'Clamp flange and strongback at every marked hole with a C-clamp, or let four corner holes be cut.',
    },
  ];
};
