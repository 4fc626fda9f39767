import type { Design, EndSeal } from '../design/index.js';
import type { PlaneTable } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { platePieces } from './outside-flange.js';
import type { Piece } from './outside-solid.js';

/** Half of the chord that a round of radius r makes with the rail plane, its centre c above it, mm. */
export const railHalfChord = (radius: number, centreAboveRail: number): number =>
  Math.sqrt(radius * radius - centreAboveRail * centreAboveRail);

/** Sizes of an end plate, mm: half its width at the rail, how far it hangs below the rail, the arc's length. */
export const endSealSizes = ({
  radius,
  land,
  centreAboveRail,
}: EndSeal): {
  readonly half: number;
  readonly depth: number;
  readonly arc: number;
  readonly rim: number;
} => ({
  half: railHalfChord(radius + land, centreAboveRail),
  depth: radius + land - centreAboveRail,
  arc: 2 * radius * Math.acos(centreAboveRail / radius),
  rim: 2 * (radius + land) * Math.acos(centreAboveRail / (radius + land)),
});

/** Sizes along x of an end plate that lies on the outside of the pan's end wall, mm. */
export const endPlateReach = ({ pan: { floor, sheet, flange } }: Design, { end }: EndSeal): Vec2 => {
  const [front, rear] = [floor[0]![0] + sheet.thickness, floor[floor.length - 1]![0] - sheet.thickness];
  return end === 'front' ? [front, front + flange.thickness] : [rear - flange.thickness, rear];
};

/** End plates as the boxes round them, so fuller than they are at the foot's sides and within the arc. */
export const endPlatePieces = (table: PlaneTable, design: Design): readonly Piece[] =>
  design.pan.flange.endSeals.flatMap((seal) => {
    const { half, depth } = endSealSizes(seal);
    const [rear, front] = endPlateReach(design, seal);
    const [right, left] = [seal.across - half, seal.across + half];
    const box: readonly Vec2[] = [
      [rear, right],
      [front, right],
      [front, left],
      [rear, left],
    ];
    return platePieces(table, box, -depth, 0, `${seal.end} end plate`);
  });
