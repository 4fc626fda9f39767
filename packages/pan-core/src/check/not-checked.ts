import type { Design } from '../design/index.js';

/** What fit says nothing about because the file leaves it out, as short sentences' subjects with their keys. */
export const notChecked = ({ engine, chassis }: Design): readonly string[] => {
  const lacking = (missing: boolean, text: string): readonly string[] => (missing ? [text] : []);
  return [
    ...lacking(chassis.obstacles.length === 0, 'the car itself: no obstacle is listed (chassis.obstacles)'),
    ...lacking(chassis.ground === null, 'the road (chassis.ground)'),
    ...lacking(
      chassis.ground !== null && chassis.suspension === null,
      'the road with the car on its bump stops (chassis.suspension)',
    ),
    ...lacking(
      engine.topAboveRail === null,
      'the block against bonnet and bulkhead: its height is not given (engine.top_above_rail)',
    ),
    ...lacking(
      engine.carries.length === 0,
      'starter, alternator, intake and what else rides on the engine (engine.carries)',
    ),
    ...lacking(
      engine.bellHousing === null || engine.flywheel === null,
      'bell housing and flywheel, unless both are given (engine.bell_housing, engine.flywheel)',
    ),
    ...lacking(engine.railHoles.length === 0, 'room for the flange bolts (engine.rail_holes)'),
    ...lacking(engine.inside.length === 0, 'main caps, girdle and oil jets inside the pan (engine.inside)'),
  ];
};
