import type { Design, Lid, Wall } from 'pan-core/design/index.js';
import { stepDesign } from '../../sample-design.js';
import { MOUTH, type Sketch } from './sketch.js';
import { DOOR_WIDTH } from './sketch-space.js';

const LAND = 20;

/** Gap of the mouth, mm. */
export const GAP = 8;

/** The sketch as the library reads it. Plates are told as thin as nothing: the grid's have no thickness. */
export const designOf = (sketch: Sketch): Design => {
  const [low, high] = [-sketch.width / 2 - LAND, sketch.width / 2 + LAND];
  return stepDesign((design) => {
    design.engine.rail.outline = [
      [-LAND, low],
      [sketch.length + LAND, low],
      [sketch.length + LAND, high],
      [-LAND, high],
    ];
    design.engine.rail.land = LAND;
    design.engine.railHoles = [];
    design.engine.crankcaseTop = sketch.top;
    design.engine.crankcaseDisplaced = sketch.displaced;
    design.engine.tilt = { noseUp: sketch.attitude.noseUp, leanLeft: sketch.attitude.leanLeft };
    design.chassis.body = { rollPerG: sketch.attitude.rollPerG, divePerG: sketch.attitude.divePerG };
    design.pan.sheet.thickness = sketch.thickness;
    design.pan.sheet.bendRadius = sketch.radius;
    design.pan.floor = sketch.floor.map(([x, down]) => [x, down]);
    design.pan.joints.welded = sketch.folded ? [] : sketch.floor.map((_, i) => i);
    for (const side of ['left', 'right'] as const) {
      design.pan[side] = [
        [0, sketch.halfWidths.rear],
        [sketch.length, sketch.halfWidths.front],
      ];
    }
    design.pan.wings = sketch.wings.map((wing, i) => ({
      name: `wing ${i}`,
      side: wing.side,
      rear: wing.rear,
      front: wing.front,
      topDown: { rear: wing.top, front: wing.top },
      topFall: 0,
      beyondWall: { rear: wing.beyond, front: wing.beyond },
    }));
    design.pickup.at = [sketch.mouthAt, 0];
    design.pickup.gap = GAP;
    design.pickup.mouth = MOUTH;
    design.pickup.route = [];
    design.baffles = [...sketch.lids.map(lidOf), ...sketch.walls.map(wallOf)] as typeof design.baffles;
  });
};

const lidOf = (lid: Sketch['lids'][number], i: number): Lid => ({
  kind: 'lid',
  name: `lid ${i}`,
  down: lid.down,
  rear: lid.rear,
  front: lid.front,
  span: null,
  fixed: 'bolted',
  thickness: 0,
  holes: lid.holes.map(([x, diameter]) => ({ at: [x, 0], size: diameter })),
});

const wallOf = (wall: Sketch['walls'][number], i: number): Wall => ({
  kind: 'wall',
  name: `wall ${i}`,
  run: 'across',
  at: wall.at,
  span: null,
  topDown: wall.top,
  weep: wall.weep,
  fixed: 'welded',
  thickness: 0,
  doors: wall.doors.map((door) => ({
    size: [DOOR_WIDTH, door.height],
    at: 0,
    up: door.up,
    letsOil: door.lets,
  })),
  holes: wall.holes.map(([down, diameter]) => ({ at: [0, down], size: diameter })),
});
