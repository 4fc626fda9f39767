import { mergePieces, type Polygon, polygonArea, subtractAll } from '../geometry/index.js';
import { freeze, type Vec2, type Vec3 } from '../numeric/index.js';
import type { Barrier } from './barrier.js';
import type { PanModel } from './model.js';
import type { Plate, PlateOpening } from './plate.js';

/**
 * The baffles as plates that fit the pan's inside: lids in (x, y), walls across in (y, z), walls along in
 * (x, z). Outlines stand clear of the floor by the weep; doors and holes are listed apart.
 */
export const platesOf = (model: Pick<PanModel, 'barriers' | 'blocked'>): readonly Plate[] =>
  freeze(
    model.barriers.map((barrier) =>
      plateOf(
        barrier,
        model.blocked.filter((b) => b.baffle === barrier.index).flatMap((b) => b.pieces),
      ),
    ),
  );

const plateOf = (barrier: Barrier, pieces: readonly Polygon[]): Plate => {
  const { baffle, index, passages } = barrier;
  const along = baffle.kind === 'wall' && baffle.run === 'along';
  // A plane across y drops into (z, x); people read (x, z).
  const turn = (p: Polygon): Polygon => (along ? p.map((q): Vec2 => [q[1], q[0]]).reverse() : p);
  const weeps = passages.filter((p) => p.kind === 'weep').map((p) => p.polygon);
  const solid = subtractAll(pieces, weeps);
  const openings = passages
    .filter((p) => p.kind !== 'weep')
    .map((p, i): PlateOpening => {
      const hole =
        p.kind === 'hole' && p.cut === undefined
          ? baffle.holes[i - (baffle.kind === 'wall' ? baffle.doors.length : 0)]
          : undefined;
      return {
        kind: p.kind === 'door' ? 'door' : 'hole',
        outline: turn(p.polygon),
        diameter: typeof hole?.size === 'number' ? hole.size : null,
        ...(p.cut === undefined ? {} : { cut: p.cut }),
      };
    });
  const outlines = mergePieces(solid).map(turn);
  const area =
    outlines.reduce((sum, o) => sum + polygonArea(o), 0) -
    openings.reduce((sum, o) => sum + polygonArea(o.outline), 0);
  return { baffle, index, ...frameOf(barrier), outlines, openings, area };
};

const frameOf = ({ baffle }: Barrier): { origin: Vec3; u: Vec3; v: Vec3; normal: Vec3 } => {
  if (baffle.kind === 'lid')
    return { origin: [0, 0, -baffle.down], u: [1, 0, 0], v: [0, 1, 0], normal: [0, 0, 1] };
  return baffle.run === 'across'
    ? { origin: [baffle.at, 0, 0], u: [0, 1, 0], v: [0, 0, 1], normal: [1, 0, 0] }
    : { origin: [0, baffle.at, 0], u: [1, 0, 0], v: [0, 0, 1], normal: [0, 1, 0] };
};
