import { type Design, STAY } from '../design/index.js';
import { type Profile, pickupStay, tubeOutside } from '../pan/index.js';
import { angleStrip, stripPart } from './angle-strip.js';
import { mediumHole } from './flange-hole.js';
import type { Part } from './part.js';

/** The strip that holds the pickup's tube, where the design asks for one. */
export const stayParts = (design: Design, profile: Profile): readonly Part[] => {
  const stay = pickupStay(design, profile);
  if (stay === null) return [];
  const { width, thickness, foot, arm, clip, seat } = stay;
  const { size, clip: thread } = design.pickup.stay!;
  const strip = angleStrip(design, thickness, 'stay', {
    width,
    legs: [foot.length, arm.length],
    measured: 'outside',
    angle: Math.PI / 2,
  });
  return [
    stripPart(design, thickness, strip, {
      name: STAY,
      what: 'Holds the pickup’s tube to a bolt of the engine.',
      quantity: 1,
      holes: [
        { at: [foot.hole, width / 2], diameter: mediumHole(size), what: `M${size} bolt of the engine` },
        {
          at: [strip.length - (arm.length - arm.hole), width / 2],
          diameter: mediumHole(thread),
          what: `M${thread} bolt of the clip`,
        },
      ],
      notes: [
        `Foot ${foot.length.toFixed(1)} mm and arm ${arm.length.toFixed(1)} mm, both over the outside of the bend; K ${strip.k}.`,
        `Foot under the seat at ${words(seat)}; arm down beside the tube.`,
        `Plain steel clip for a ${tubeOutside(design).toFixed(1)} mm tube, its middle ${clip.along.toFixed(0)} mm along from the mouth; no rubber in hot oil.`,
        'Bolt it up with the tube in place and nothing sprung; lock both bolts.',
      ],
    }),
  ];
};

const words = (p: readonly number[]): string => p.map((v) => v.toFixed(0)).join(', ');
