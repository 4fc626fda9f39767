import type { Design, EndSeal } from '../design/index.js';
import type { Profile } from '../pan/index.js';
import { endSealSizes, halfWidthAt } from '../pan/index.js';
import { endSealName } from './end-seal.js';
import { atLeast, type SheetFinding } from './finding.js';

/** Metal round a groove milled into an arc, mm: common practice, no source. */
const WALL = 2.5;

/** Whether end plates find room at the pan's ends and hold their groove; the tightest of both ends. */
export const endSealFindings = (design: Design, profile: Profile): readonly SheetFinding[] => {
  const { endSeals } = design.pan.flange;
  if (endSeals.length === 0) return [];
  const worst = <T extends { readonly value: number }>(all: readonly T[]): T =>
    all.reduce((a, b) => (b.value < a.value ? b : a));
  const foot = worst(endSeals.map((seal) => ({ seal, value: roomBelow(profile, seal) })));
  const side = worst(endSeals.map((seal) => ({ seal, value: roomBeside(design, seal) })));
  const grooved = endSeals.flatMap((seal) => {
    const value = grooveWall(design, seal);
    return value === null ? [] : [{ seal, value }];
  });
  return [
    atLeast(design, {
      id: 'end_seal_foot',
      title: 'end plate above the floor’s bend',
      value: foot.value,
      limit: design.pan.sheet.thickness,
      unit: 'mm',
      below: 'fail',
      because: `the ${endSealName(foot.seal)} hangs ${endSealSizes(foot.seal).depth.toFixed(1)} mm below the rail; its weld needs flat wall below it`,
      try: (short) =>
        `Let the floor begin ${short.toFixed(1)} mm deeper at the ${foot.seal.end}, or take a smaller land.`,
    }),
    atLeast(design, {
      id: 'end_seal_side',
      title: 'end plate beside the pan’s corner',
      value: side.value,
      limit: 0,
      unit: 'mm',
      below: 'fail',
      because: `the ${endSealName(side.seal)} is ${(2 * endSealSizes(side.seal).half).toFixed(1)} mm wide at the rail, and must end on the flat of the ${side.seal.end} wall`,
      try: (short) => `Take a land ${short.toFixed(1)} mm smaller or more, or widen the pan at that end.`,
    }),
    ...(grooved.length === 0
      ? []
      : [
          atLeast(design, {
            id: 'end_seal_groove',
            title: 'metal round the end seal’s groove',
            value: worst(grooved).value,
            limit: WALL,
            unit: 'mm',
            below: 'warn',
            because: `beside and below the groove of the ${endSealName(worst(grooved).seal)} (common practice)`,
            try: (short) =>
              `Make the groove ${(2 * short).toFixed(1)} mm narrower or ${short.toFixed(1)} mm less deep, or the flange thicker.`,
          }),
        ]),
  ];
};

/** From the plate's foot to where the end wall begins to bend into the floor, along the inside, mm. */
const roomBelow = (profile: Profile, seal: EndSeal): number => {
  const ends = profile.path;
  const piece = seal.end === 'front' ? ends[0]! : ends[ends.length - 1]!;
  const depth = -(seal.end === 'front' ? piece.to : piece.from)[1];
  return depth - endSealSizes(seal).depth;
};

const roomBeside = (design: Design, seal: EndSeal): number => {
  const { floor, left, right } = design.pan;
  const x = seal.end === 'front' ? floor[0]![0] : floor[floor.length - 1]![0];
  const { half } = endSealSizes(seal);
  return Math.min(halfWidthAt(left, x) - (seal.across + half), halfWidthAt(right, x) - (half - seal.across));
};

const grooveWall = (design: Design, { groove, land }: EndSeal): number | null =>
  groove === null ? null : Math.min((design.pan.flange.thickness - groove.width) / 2, land - groove.depth);
