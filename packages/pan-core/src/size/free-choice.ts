import type { Design } from '../design/index.js';
import { PanError, type Problem } from '../errors/index.js';
import { nearestWord } from '../units/index.js';
import type { Freedom, FreeWish } from './freedom.js';
import { type Choosable, choosable } from './freedom-list.js';
import usual from './freedom-range.json' with { type: 'json' };

/** Set free when the user names nothing: what a builder changes first. */
const USUAL_NAMES = ['sump depth', 'shallow depth', 'step', 'fill', 'mouth x'];
const USUAL_ENDINGS = [' reach', ' depth', ' rear', ' place'];

const isUsual = (name: string, design: Design): boolean =>
  USUAL_NAMES.includes(name) ||
  [...design.pan.wings, ...design.baffles].some(
    (thing) => name.startsWith(thing.name) && USUAL_ENDINGS.includes(name.slice(thing.name.length)),
  );

/**
 * The free values a user asked for, or the usual ones where nothing was said.
 *
 * @throws PanError `input-option` for a name the design does not have or a range that is none
 */
export const freedomsOf = (raw: unknown, design: Design, wishes: readonly FreeWish[]): readonly Freedom[] => {
  const known = choosable(raw, design);
  if (wishes.length === 0) {
    return known
      .filter((one) => isUsual(one.name, design))
      .map((one) => freedomOf(one, { what: one.name, from: null, to: null, step: null }));
  }
  const problems: Problem[] = [];
  const taken: Freedom[] = [];
  for (const wish of wishes) {
    const one = known.find(({ name }) => name.toLowerCase() === wish.what.toLowerCase());
    if (one === undefined) problems.push(notKnown(wish.what, known));
    else if (taken.some(({ name }) => name === one.name)) problems.push(twice(one.name));
    else {
      const freedom = freedomOf(one, wish);
      if (freedom.from > freedom.to) problems.push(noRange(freedom));
      else taken.push(freedom);
    }
  }
  if (problems.length > 0) throw new PanError(problems);
  return taken;
};

const freedomOf = ({ name, kind, now, edits }: Choosable, { from, to, step }: FreeWish): Freedom => {
  const { reach, step: usualStep } = usual[kind];
  const least = name === 'mouth y' || name.startsWith('mouth x') ? Number.NEGATIVE_INFINITY : now * 0.2;
  return {
    name,
    kind,
    now,
    from: from ?? Math.max(least, now - reach),
    to: to ?? now + reach,
    step: step ?? usualStep,
    rangeAssumed: from === null || to === null,
    edits,
  };
};

const problem = (message: string, found: string, advice: string): Problem => ({
  code: 'input-option',
  path: [],
  message,
  found,
  advice,
});

const notKnown = (what: string, known: readonly Choosable[]): Problem => {
  const names = known.map(({ name }) => name);
  const near = nearestWord(what, names);
  return problem(
    `This design has no "${what.slice(0, 60)}" to set free${near === null ? '' : `; did you mean "${near}"`}.`,
    what.slice(0, 60),
    `It has: ${names.join(', ')}.`,
  );
};

const twice = (name: string): Problem =>
  problem(`"${name}" is set free twice.`, name, 'Keep one of the two ranges.');

const noRange = ({ name, from, to }: Freedom): Problem =>
  problem(
    `"${name}" is to lie from ${from} to ${to}, which holds nothing.`,
    name,
    'Write the lesser end first, as in 140..180.',
  );
