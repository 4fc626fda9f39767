import type { Design, Round } from '../design/index.js';
import { type Body, type BodySolid, faceNameAt } from './body.js';
import { itemSolid } from './carried.js';
import { type Clearance, fixedClearance, unknownClearance } from './clearance.js';
import { deepestTurn } from './deepest-turn.js';
import { leastGap, NO_ROCK } from './least-gap.js';
import practice from './practice.json' with { type: 'json' };
import { roundSolid } from './round.js';
import { surfaceName } from './surface-name.js';
import { gapWords } from './words.js';

/** The pan against what moves with it: bell housing, flywheel and all that the engine carries. */
export const besideEngineClearances = (design: Design, pan: Body): readonly Clearance[] => {
  const { carries, crank, flywheel, bellHousing } = design.engine;
  const rounds: readonly (readonly [string, Round | null])[] = [
    ['flywheel', flywheel],
    ['bell housing', bellHousing],
  ];
  return [
    ...rounds.flatMap(([name, round]): readonly Clearance[] => {
      if (round === null) return [];
      if (crank !== null) return [rowOf(pan, roundSolid(name, round, crank.centreAboveRail))];
      return [
        unknownClearance({
          name: `pan to ${name}`,
          kind: 'engine',
          allowed: practice.besideEngine,
          between: ['pan', name],
          because: `The ${name} stands about the crank, whose height is not given (engine.crank).`,
        }),
      ];
    }),
    ...carries.map((item) => rowOf(pan, itemSolid(item))),
  ];
};

const rowOf = (pan: Body, thing: BodySolid): Clearance => {
  const hull = { points: thing.vertices, radius: 0 };
  const gap = leastGap(pan, hull, NO_ROCK);
  const deep = gap.meets ? deepestTurn(pan, hull, NO_ROCK) : null;
  const feature =
    deep === null
      ? faceNameAt(pan.solids[gap.solid]!, gap.onBody, gap.toward)
      : (surfaceName(pan, deep) ?? pan.solids[gap.solid]!.name);
  const distance = deep === null ? gap.distance : -deep.depth;
  return fixedClearance({
    name: `pan to ${thing.name}`,
    kind: 'engine',
    distance,
    allowed: practice.besideEngine,
    between: [feature, thing.name],
    at: deep?.at ?? gap.onBody,
    because: `The ${feature} and the ${thing.name}, which moves with it, are ${gapWords(distance)}.`,
  });
};
