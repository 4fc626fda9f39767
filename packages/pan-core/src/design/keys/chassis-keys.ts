import { assumedText } from '../default.js';
import { checked, choice, optional, orUnknown, section } from '../field/index.js';
import { named } from './items.js';
import type { Kit } from './kit.js';
import { obstacleField } from './obstacle-keys.js';

const suspensionField = (k: Kit) =>
  checked(
    section('how far the car can sink and pitch on its springs', {
      front_axle: k.length('x of the front axle'),
      rear_axle: k.length('x of the rear axle'),
      bump_front: k.length('how far the front can go down to its bump stops', { from: '0 mm', to: '500 mm' }),
      bump_rear: k.length('how far the rear can go down', { from: '0 mm', to: '500 mm' }),
      droop_front: optional(
        k.length('how far the front can come up', { from: '0 mm', to: '500 mm' }),
        'as far as it goes down',
      ),
      droop_rear: optional(
        k.length('how far the rear can come up', { from: '0 mm', to: '500 mm' }),
        'as far as it goes down',
      ),
    }),
    ({ front_axle, rear_axle }, report) => {
      if (rear_axle < front_axle) return;
      report(
        {
          code: 'input-range',
          says: `is ${front_axle} mm; it must lie ahead of the rear axle, ${rear_axle} mm`,
        },
        ['front_axle'],
      );
    },
  );

export const chassisField = (k: Kit) =>
  section('the car around the engine', {
    axes: orUnknown(
      choice('whether the points below are level with the car or tilted with the engine', ['car', 'pan']),
    ),
    ground: orUnknown(
      k.length('z of the road, below the rail and so negative', { from: '-2000 mm', below: '0 mm' }),
    ),
    ground_plus_minus: optional(
      k.length('how well the height of the road was measured', { from: '0 mm', to: '100 mm' }),
      assumedText('plus or minus'),
    ),
    suspension: optional(suspensionField(k)),
    engine_moves: optional(
      section('how far the engine moves on its mountings', {
        rock: optional(
          k.angle('rocking either way', { from: '0 deg', to: '20 deg' }),
          assumedText('engine rock'),
        ),
        up: optional(k.length('up', { from: '0 mm', to: '100 mm' }), assumedText('engine up')),
        down: optional(k.length('down', { from: '0 mm', to: '100 mm' }), assumedText('engine down')),
        fore_aft: optional(
          k.length('fore and aft', { from: '0 mm', to: '100 mm' }),
          assumedText('engine fore and aft'),
        ),
      }),
    ),
    body: optional(
      section('how far the body leans under acceleration', {
        roll_per_g: optional(k.anglePerG('roll in a turn'), assumedText('roll per g')),
        dive_per_g: optional(k.anglePerG('dive in braking'), assumedText('dive per g')),
      }),
    ),
    obstacles: optional(named('things of the car that the engine must clear', obstacleField(k), 200)),
  });
