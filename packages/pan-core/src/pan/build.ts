import type { Design } from '../design/index.js';
import { type ErrorCode, PanError } from '../errors/index.js';
import { cellVolume, createPlaneTable, polygonArea } from '../geometry/index.js';
import { type Barrier, barriers as makeBarriers } from './barrier.js';
import type { Room } from './cell.js';
import { crankcaseRooms } from './crankcase.js';
import { openShares } from './displacement.js';
import { depthAt, type FloorPiece, formedFloor, sharpFloor, stepTop } from './floor-line.js';
import type { PanModel } from './model.js';
import { placeMouth } from './mouth.js';
import { cutNotches } from './notch-cut.js';
import { findOpenings, type OpeningResult } from './opening.js';
import { floorProfile } from './profile.js';
import { slabs } from './slab.js';
import { splitAtBarriers } from './split.js';
import { wingRooms } from './wing-room.js';

/**
 * The cells and openings of a design: formed corners, wings, notches, baffles, and the closed crankcase.
 *
 * @throws PanError with a `shape-` code where the pan, a wing, a notch, a baffle or the mouth cannot be.
 */
export const buildPan = (design: Design): PanModel => {
  const profile = floorProfile(design);
  const table = createPlaneTable();
  const sumpFront = design.pan.sumpFrom ?? stepTop(design.pan.floor);
  const below = (floor: readonly FloorPiece[]): readonly Room[] =>
    cutNotches(table, design, [
      ...slabs(table, design, floor, sumpFront),
      ...wingRooms(table, design, floor),
    ]);
  const floor = formedFloor(profile);
  const barriers = makeBarriers(table, design, floor, stepDepth(sharpFloor(profile), sumpFront));
  const cells = [...splitAtBarriers(table, below(floor), barriers), ...crankcaseRooms(table, design)];
  const found = findOpenings(table, cells, barriers);
  refuseStray(barriers, found);
  const mouth = placeMouth(table, design, floor, cells, barriers);
  return {
    design,
    profile,
    table,
    cells,
    volumes: cells.map(cellVolume),
    shares: openShares(table, design, cells, found.covered),
    openings: found.openings,
    barriers,
    bare: found.bare,
    blocked: found.covered,
    mouth,
    sumpFront,
    sharp: sharpVolumes(below(sharpFloor(profile)), sumpFront),
  };
};

/** Depth of the shallow's floor where it meets the step: the top of a wall that has no lid and no height. */
const stepDepth = (floor: readonly FloorPiece[], sumpFront: number): number => depthAt(floor, sumpFront) ?? 0;

const sharpVolumes = (rooms: readonly Room[], sumpFront: number): { shallow: number; sump: number } => {
  let [shallow, sump] = [0, 0];
  for (const room of rooms) {
    if (room.zone === 'shallow' || (room.zone === 'wing' && rearOf(room) >= sumpFront))
      shallow += cellVolume(room);
    else sump += cellVolume(room);
  }
  return { shallow, sump };
};

const rearOf = (room: Room): number => Math.min(...room.faces.flatMap((f) => f.loop.map((p) => p[0])));

/** A baffle, door or hole that meets no oil space was drawn outside the pan or its plate. */
const refuseStray = (barriers: readonly Barrier[], found: OpeningResult): void => {
  for (const barrier of barriers) {
    const area = found.covered.reduce((sum, c) => sum + (c.baffle === barrier.index ? c.area : 0), 0);
    const refuse = (code: ErrorCode, path: (string | number)[], message: string, advice: string): PanError =>
      new PanError({ code, path, message, advice });
    if (area <= 0) {
      throw refuse(
        'shape-baffle',
        ['baffles', barrier.index],
        `The baffle "${barrier.baffle.name}" does not stand in the pan.`,
        'Check its place and span against the pan’s inside.',
      );
    }
    barrier.passages.forEach((passage, i) => {
      if (passage.kind === 'weep') return;
      const drawn = Math.abs(polygonArea(passage.polygon));
      const got = found.passed.get(`${barrier.index}/${i}`) ?? 0;
      if (got < drawn * 0.999) {
        throw refuse(
          'shape-baffle',
          ['baffles', barrier.index],
          `The ${passage.label} reaches past its plate: ${got.toFixed(0)} of ${drawn.toFixed(0)} mm² are in it.`,
          'Move it or make it smaller; a door stands on `up` above the floor under its centre.',
        );
      }
    });
  }
};
