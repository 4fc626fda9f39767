import type { Bung, Design, Dipstick, Drain, OilPlan, SpeedCurve } from '../design.js';
import type { Drawings } from '../drawing.js';
import type { DesignKeys } from '../keys/design-keys.js';
import type { RailSurvey } from '../rail-survey.js';
import { resolveBaffle } from './baffle.js';
import { resolveChassis } from './chassis.js';
import { resolveEngine } from './engine.js';
import { resolveLimits } from './limits.js';
import { resolveManoeuvres } from './manoeuvre.js';
import type { Notes } from './notes.js';
import { resolvePanShape } from './pan-shape.js';
import { resolvePickup } from './pickup.js';
import { resolvePrices, resolveShop } from './shop.js';

/** The design that the keys say, with every default noted. */
export const designOf = (
  keys: DesignKeys,
  drawings: Drawings,
  notes: Notes,
): { readonly design: Design; readonly rail: RailSurvey | null } => {
  const { engine, survey } = resolveEngine(keys.engine, { units: keys.units, drawings }, notes);
  const pan = resolvePanShape(keys.pan, engine.railHoles, notes);
  const design: Design = {
    format: keys.format,
    title: keys.title,
    engine,
    oil: resolveOil(keys.oil, notes),
    pan,
    pickup: resolvePickup(keys.pickup, pan.sheet.thickness, notes),
    baffles: (keys.baffles ?? []).map((baffle, i) => resolveBaffle(baffle, i, pan.sheet.thickness, notes)),
    drain: resolveDrain(keys.drain, notes),
    bungs: (keys.bungs ?? []).map((bung, i) => resolveBung(bung, i, notes)),
    dipstick: resolveDipstick(keys.dipstick),
    chassis: resolveChassis(keys.chassis, notes),
    manoeuvres: resolveManoeuvres(keys.manoeuvres, keys.oil, notes),
    shop: resolveShop(keys.shop, notes),
    prices: resolvePrices(keys.prices),
    limits: {},
  };
  return { design: { ...design, limits: resolveLimits(keys.limits ?? {}, design) }, rail: survey };
};

type BySpeed = number | SpeedCurve;
const isCurve = (given: BySpeed | null | undefined): given is SpeedCurve => typeof given === 'object';

/** The value at the highest speed given, or the only one. */
const atTop = (given: BySpeed | undefined): number | undefined =>
  isCurve(given) ? given.at(-1)?.[1] : given;

const curvesOf = (keys: DesignKeys['oil']): Pick<OilPlan, 'bySpeed'> => {
  const [heldUp, pump] = [keys.held_up, keys.pump].map((given) => (isCurve(given) ? given : null));
  if (heldUp == null && pump == null) return {};
  return { bySpeed: { heldUp: heldUp ?? null, pump: pump ?? null } };
};

const resolveOil = (keys: DesignKeys['oil'], notes: Notes): OilPlan => {
  const path = ['oil'];
  if (keys.pump === null || keys.pump === undefined) {
    notes.lack([...path, 'pump'], 'the flow of the oil pump', 'how long the oil over the pickup lasts');
  }
  return {
    fill: keys.fill,
    filter: notes.take(keys.filter, [...path, 'filter'], 'volume', 'oil filter'),
    heldUp: notes.take(atTop(keys.held_up), [...path, 'held_up'], 'volume', 'oil held up'),
    galleries: notes.take(keys.galleries, [...path, 'galleries'], 'volume', 'oil in galleries'),
    grade: notes.takeWord(keys.grade, [...path, 'grade'], 'oil grade'),
    sheet: {
      at40: keys.kv40 ?? null,
      at100: keys.kv100 ?? null,
      index: keys.vi ?? null,
      density: keys.density ?? null,
    },
    pump: atTop(keys.pump ?? undefined) ?? null,
    cranking: crankingFlow(keys, notes),
    ...curvesOf(keys),
  };
};

/** A pump turns slowly when cranked, and what it moves goes with its speed. */
const crankingFlow = (keys: DesignKeys['oil'], notes: Notes): number | null => {
  if (keys.pump_cranking !== undefined) return keys.pump_cranking;
  const pump = atTop(keys.pump ?? undefined);
  if (pump === undefined) return null;
  const share = notes.take(undefined, ['oil', 'pump_cranking'], 'share', 'pump cranking');
  return pump * share;
};

const resolveDrain = (keys: DesignKeys['drain'], notes: Notes): Drain | null => {
  if (keys === undefined) return null;
  const path = ['drain'];
  return {
    at: keys.at,
    thread: keys.thread,
    bung: notes.take(keys.bung, [...path, 'bung'], 'length', 'drain bung'),
    plugBelow: notes.take(keys.plug_below, [...path, 'plug_below'], 'length', 'plug below'),
  };
};

const resolveBung = (keys: NonNullable<DesignKeys['bungs']>[number], index: number, notes: Notes): Bung => ({
  name: keys.name,
  purpose: keys.purpose,
  at: keys.at,
  toward: keys.toward,
  diameter: notes.take(keys.diameter, ['bungs', index, 'diameter'], 'length', 'bung diameter'),
  ...(keys.thread === undefined ? {} : { thread: keys.thread }),
});

const resolveDipstick = (keys: DesignKeys['dipstick']): Dipstick | null =>
  keys === undefined ? null : { enters: keys.enters, toward: keys.toward };
