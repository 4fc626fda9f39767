import { type Design, STAY } from '../design/index.js';
import type { Plate, Profile } from '../pan/index.js';
import type { BodySolid } from './body.js';
import { type Clearance, fixedClearance, unknownClearance } from './clearance.js';
import practice from './practice.json' with { type: 'json' };
import { staySolids } from './stay-solid.js';
import { type Nearest, nearestOf, rodSweeps, type Sweep } from './sweep.js';
import { panToSweep } from './sweep-pan.js';
import { plateToSweep, solidsToSweep } from './sweep-plate.js';
import { tubeToSweep } from './sweep-tube.js';
import { passWords, round1 } from './words.js';

/** The rods' sweep against the pan, every baffle and the pickup tube, each at its nearest throw. */
export const crankClearances = (
  design: Design,
  profile: Profile,
  plates: readonly Plate[],
): readonly Clearance[] => {
  const { crank } = design.engine;
  const sweeps = crank === null ? null : rodSweeps(crank);
  if (sweeps === null || sweeps.length === 0) {
    return [
      unknownClearance({
        name: 'rods to pan',
        kind: 'crank',
        allowed: practice.sweepToPan,
        between: ['rods', 'pan'],
        because:
          crank === null
            ? 'The crank is not given (engine.crank), so the rods’ sweep is not known.'
            : 'Where the throws lie is not given (engine.crank.throws), so the rods’ sweep is not known.',
      }),
    ];
  }
  return [
    row('pan', practice.sweepToPan, sweeps, (s) => panToSweep(design, profile, s)),
    ...plates.map((plate) =>
      row(plate.baffle.name, practice.sweepToTray, sweeps, (s) => ({
        ...plateToSweep(plate, s),
        part: plate.baffle.name,
      })),
    ),
    tubeRow(design, sweeps),
    ...stayRow(staySolids(design, profile), sweeps),
  ];
};

type Part = Nearest & { readonly part: string };

const row = (
  what: string,
  allowed: number,
  sweeps: readonly Sweep[],
  near: (s: Sweep) => Part,
): Clearance => {
  const found = sweeps.map(near);
  const distance = nearestOf(found).distance;
  const throwAt = found.findIndex((f) => f.distance === distance);
  const { at, part } = found[throwAt]!;
  return fixedClearance({
    name: `rods to ${what}`,
    kind: 'crank',
    distance,
    allowed,
    between: [`rod of throw ${throwAt + 1}`, part],
    at,
    because: `The rod of throw ${throwAt + 1} from the rear sweeps a cylinder of radius ${round1(sweeps[throwAt]!.radius)} mm and ${passWords(part, distance)}.`,
  });
};

const tubeRow = (design: Design, sweeps: readonly Sweep[]): Clearance => {
  if (tubeToSweep(design.pickup, sweeps[0]!) === null) {
    return unknownClearance({
      name: 'rods to pickup tube',
      kind: 'crank',
      allowed: practice.sweepToTray,
      between: ['rods', 'pickup tube'],
      because: 'The tube’s way from the mouth to the pump is not given (pickup.route).',
    });
  }
  return row('pickup tube', practice.sweepToTray, sweeps, (s) => ({
    ...tubeToSweep(design.pickup, s)!,
    part: 'pickup tube',
  }));
};

const stayRow = (solids: readonly BodySolid[], sweeps: readonly Sweep[]): readonly Clearance[] =>
  solids.length === 0
    ? []
    : [row(STAY, practice.sweepToTray, sweeps, (s) => ({ ...solidsToSweep(solids, s), part: STAY }))];
