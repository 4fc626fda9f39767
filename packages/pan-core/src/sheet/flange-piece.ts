import type { Design } from '../design/index.js';
import {
  type Path,
  pathBox,
  type Region,
  regionPieces,
  segmentLength,
  subtractPath,
} from '../geometry/index.js';
import type { Profile } from '../pan/index.js';
import { endSealCutter } from './end-seal.js';
import { onMaterial } from './finish.js';
import { flangeRim } from './flange-scallop.js';
import { flangeOpening } from './flange-shape.js';
import { halfNames, jointLine, splitCutters } from './flange-split.js';

/** One plate of the flange, pan axes seen from above. */
export interface FlangePiece {
  readonly name: string;
  readonly outline: Path;
  readonly openings: readonly Path[];
}

/** The flange as it is cut: whole, in two at its joint, and open where end plates stand. */
export const flangePieces = (design: Design, profile: Profile): readonly FlangePiece[] => {
  const region = flangeRegion(design, profile);
  const { split } = design.pan.flange;
  if (split === null) return named('flange', region);
  const [low, high] = splitCutters(split, region);
  const [first, second] = halfNames(split);
  return [...named(first, subtractPath(region, high)), ...named(second, subtractPath(region, low))];
};

/** Length of each stretch of the joint of a two-piece flange, mm, and the stretches themselves. */
export const flangeJoints = (design: Design, profile: Profile): Path => {
  const { split } = design.pan.flange;
  if (split === null) return [];
  const region = flangeRegion(design, profile);
  return jointLine(split, region)
    .flatMap((s) => onMaterial(s, region.loops))
    .filter((s) => segmentLength(s) > 1e-6);
};

const flangeRegion = (design: Design, profile: Profile): Region => {
  const rim = flangeRim(design, profile);
  const { min, max } = pathBox(rim);
  const reach = max[0] - min[0];
  return design.pan.flange.endSeals.reduce<Region>(
    (region, seal) => subtractPath(region, endSealCutter(seal, profile, reach)),
    { loops: [rim, flangeOpening(design, profile)] },
  );
};

/** Pieces that an end plate leaves apart are told by the side of the car they lie on. */
const named = (name: string, region: Region): readonly FlangePiece[] => {
  const pieces = regionPieces(region);
  if (pieces.length === 1) return [{ name, ...pieces[0]! }];
  const middle = (path: Path): number => (pathBox(path).min[1] + pathBox(path).max[1]) / 2;
  const ordered = [...pieces].sort((a, b) => middle(a.outline) - middle(b.outline));
  const words = ordered.length === 2 ? ['right', 'left'] : ordered.map((_, i) => String(i + 1));
  return ordered.map((piece, i) => ({ name: `${name} ${words[i]}`, ...piece }));
};
