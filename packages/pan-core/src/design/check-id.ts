import table from './check-ids.json' with { type: 'json' };
import type { Design } from './design.js';
import { STAY } from './stay-name.js';

/** A lower-case word for an id, from whatever the user called it. */
export const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '')
    .slice(0, 40) || 'unnamed';

/** Every check of a design whose limit may be set, by id, with the unit it prints. */
export const settableLimits = (design: Design): ReadonlyMap<string, string> => {
  const names: Readonly<Record<string, readonly string[]>> = {
    manoeuvres: design.manoeuvres.map(({ name }) => name),
    fittings: ['dipstick tube', ...design.bungs.map(({ name }) => name)],
    clearances: clearanceNames(design),
  };
  return new Map([
    ...Object.entries(table.ids),
    ...table.each.flatMap(({ id, of, unit }) =>
      (names[of] ?? []).map((name): [string, string] => [id.replace('*', slug(name)), unit]),
    ),
  ]);
};

/** What can be near what, as the clearances are called. */
const clearanceNames = ({ chassis, baffles, engine, pickup }: Design): readonly string[] => [
  ...chassis.obstacles.flatMap(({ name }) => [name, `engine to ${name}`]),
  ...['pan', 'pickup tube', ...baffles.map(({ name }) => name)].map((what) => `rods to ${what}`),
  ...(pickup.stay === undefined ? [] : [`rods to ${STAY}`, `${STAY} to pan`, `${STAY} to baffles`]),
  ...engine.inside.flatMap(({ name }) =>
    ['pan', 'baffles', 'pickup tube'].map((what) => `${name} to ${what}`),
  ),
  ...['flywheel', 'bell housing', ...engine.carries.map(({ name }) => name)].map((what) => `pan to ${what}`),
  'ground at full bump',
  'flange bolts',
];
