import { assumedText } from '../default.js';
import { checked, choice, list, optional, section } from '../field/index.js';
import { nameField } from './items.js';
import type { Kit } from './kit.js';
import { boltSize, threadWithPitch } from './thread.js';

const stayField = (k: Kit) =>
  section('a folded strip that holds the tube to a bolt of the engine', {
    at: k.point3('middle of the seat for its bolt, which faces down'),
    size: boltSize('thread of that bolt'),
    clip: optional(boltSize('thread of the bolt of the tube’s clip'), assumedText('stay clip')),
    width: optional(
      k.length('width of the strip', { from: '10 mm', to: '100 mm' }),
      assumedText('stay width'),
    ),
    thickness: optional(
      k.length('thickness of the strip', { from: '1 mm', to: '12 mm' }),
      assumedText('stay thickness'),
    ),
  });

export const pickupField = (k: Kit) =>
  checked(
    section('the pickup', {
      at: k.point2('[x, y] of the mouth centre'),
      gap: optional(
        k.length('gap from the mouth to the floor', { from: '0 mm', to: '200 mm' }),
        assumedText('pickup gap'),
      ),
      mouth: optional(k.size('diameter of the mouth', '300 mm'), assumedText('pickup mouth')),
      bore: optional(k.size('inside diameter of the tube', '100 mm'), assumedText('pickup bore')),
      wall: optional(
        k.length('wall of the tube', { from: '0.5 mm', to: '10 mm' }),
        assumedText('pickup wall'),
      ),
      route: optional(
        list('centre line of the tube from the mouth to the pump, [[x, y, z], …]', k.point3('bend'), {
          most: 40,
        }),
      ),
      stay: optional(stayField(k)),
    }),
    ({ route }, report) => {
      (route ?? []).forEach((point, i) => {
        const last = route?.[i - 1];
        if (last?.every((value, axis) => value === point[axis])) {
          report({ code: 'input-range', says: 'is the same point as the one before it' }, ['route', i]);
        }
      });
    },
  );

export const drainField = (k: Kit) =>
  section('the drain plug', {
    at: k.point2('[x, y] of its centre'),
    thread: threadWithPitch('thread of the plug'),
    bung: optional(k.size('outside diameter of the bung', '100 mm'), assumedText('drain bung')),
    plug_below: optional(
      k.length('how far the plug hangs below the floor', { from: '0 mm', to: '100 mm' }),
      assumedText('plug below'),
    ),
  });

export const bungField = (k: Kit) =>
  section('a weld-in fitting', {
    name: nameField('turbo return'),
    purpose: choice('what it is for', ['return', 'breather', 'temperature', 'level', 'magnet', 'other']),
    at: k.point3('where its axis meets the pan'),
    toward: k.point3('a point on its axis outside the pan'),
    diameter: optional(k.size('outside diameter', '150 mm'), assumedText('bung diameter')),
    thread: optional(threadWithPitch('thread in it')),
  });

export const dipstickField = (k: Kit) =>
  checked(
    section('the dipstick, as a straight line', {
      enters: k.point3('where its tube enters'),
      toward: k.point3('a point farther down the stick'),
    }),
    ({ enters, toward }, report) => {
      if (enters[2] > toward[2]) return;
      report(
        {
          code: 'input-range',
          says: 'is not below enters; the stick runs downward',
          value: toward[2],
          limit: enters[2],
          unit: 'mm',
        },
        ['toward'],
      );
    },
  );
