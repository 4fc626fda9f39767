import { assumedText } from '../default.js';
import { checked, choice, optional, section } from '../field/index.js';
import { corners, diameterGoesWithRod, nameField, oneOf, rodEnds } from './items.js';
import type { Kit } from './kit.js';
import { prismField } from './prism-keys.js';
import { positionsField, positionsGoWithRod } from './rod-positions.js';
import { placementField, scanField, scanUnitField, wronglyPlaced } from './scan-keys.js';

const planeField = (k: Kit) =>
  checked(
    section('a flat surface without edges', {
      at: k.point3('a point on it'),
      facing: optional(
        choice('side its free face looks to', ['down', 'up', 'front', 'rear', 'left', 'right']),
      ),
      falls_forward: optional(
        k.angle('how far it falls toward the front; only for a face that looks up or down'),
      ),
      normal: optional(k.point3('direction its free face looks to, as [x, y, z]')),
    }),
    ({ facing, falls_forward, normal }, report) => {
      oneOf({ facing, normal }, report);
      if (falls_forward !== undefined && facing !== 'down' && facing !== 'up') {
        report(
          { code: 'input-key', says: 'goes with facing down or up only', expected: 'facing: down or up' },
          ['falls_forward'],
        );
      }
      if (normal?.every((value) => value === 0)) {
        report({ code: 'input-range', says: 'has no direction: it is [0, 0, 0]' }, ['normal']);
      }
    },
  );

export const obstacleField = (k: Kit) =>
  checked(
    section('something of the car that the engine must clear', {
      name: nameField('crossmember'),
      box: optional(corners(k)),
      rod: optional(rodEnds(k)),
      diameter: optional(k.size('diameter of the rod', '1000 mm')),
      travel: optional(k.point3('how far the rod moves either way, [x, y, z]')),
      positions: optional(positionsField(k)),
      plane: optional(planeField(k)),
      prism: optional(prismField(k)),
      scan: optional(scanField),
      unit: optional(scanUnitField, assumedText('scan unit')),
      placement: optional(placementField(k)),
      clear: optional(
        k.length('clearance wanted; 20 mm suits steering', { from: '0 mm', to: '500 mm' }),
        assumedText('clear'),
      ),
      plus_minus: optional(
        k.length('how well it was measured', { from: '0 mm', to: '100 mm' }),
        assumedText('plus or minus'),
      ),
    }),
    (obstacle, report) => {
      const { box, rod, plane, prism, scan, unit, placement } = obstacle;
      oneOf({ box, rod, plane, prism, scan }, report);
      diameterGoesWithRod(obstacle, report);
      positionsGoWithRod(obstacle, report);
      if (obstacle.travel !== undefined && rod === undefined) report(...stray('travel', 'rod'));
      if (unit !== undefined && scan === undefined) report(...stray('unit', 'scan'));
      if (placement !== undefined && scan === undefined) report(...stray('placement', 'scan'));
      if (placement !== undefined) {
        const wrong = wronglyPlaced(placement, unit, obstacle.plus_minus);
        if (wrong !== null) report(wrong, ['placement', 'matches']);
      }
    },
  );

const stray = (key: string, owner: string) =>
  [
    {
      code: 'input-key',
      says: `belongs to a ${owner}, and there is none here`,
      expected: `${owner} beside ${key}`,
    },
    [key],
  ] as const;
