import type { Design } from '../design/index.js';
import { PanError } from '../errors/index.js';
import { buildPan, panelsOf, platesOf } from '../pan/index.js';
import { cutParts, type Part } from '../sheet/index.js';
import { billLines, countedWork, panSeams, panSkin, type Seam } from '../weld/index.js';
import type { Freedom } from './freedom.js';

/** Everything a pan can be made best at. */
export const goalNames = [
  'least depth',
  'most oil',
  'most g',
  'least metal',
  'cheapest',
  'least change',
] as const;
/** One of the goals, by name. */
export type GoalName = (typeof goalNames)[number];

/** What a design is to be best at: a figure in `unit`, and whether less of it is better. */
export interface Goal {
  readonly name: GoalName;
  readonly unit: string;
  /** How far apart two figures stand before a builder cares. */
  readonly scale: number;
  readonly sense: 'least' | 'most';
}

const GOALS: Readonly<Record<GoalName, Omit<Goal, 'name'>>> = {
  'least depth': { unit: 'mm', scale: 10, sense: 'least' },
  'most oil': { unit: 'L', scale: 0.5, sense: 'most' },
  'most g': { unit: 'times', scale: 0.1, sense: 'most' },
  'least metal': { unit: 'kg', scale: 0.5, sense: 'least' },
  cheapest: { unit: '', scale: 10, sense: 'least' },
  'least change': { unit: 'steps of 10 mm or half a litre', scale: 1, sense: 'least' },
};

export const goalOf = (name: GoalName): Goal => ({ name, ...GOALS[name] });

/** The name under which the cases' g can be chosen; it stands in no file. */
export const SEVERITY = 'g of the cases';

/** What one step of change is, by kind: mm, mm³, share. */
const CHANGE: Readonly<Record<Freedom['kind'], number>> = { length: 10, volume: 0.5e6, factor: 0.1 };

/** A design with the values it was chosen by, which some goals are told by. */
export interface Chosen {
  readonly design: Design;
  readonly freedoms: readonly Freedom[];
  readonly values: readonly number[];
}

/**
 * The figure of a goal. "Most oil" is the fill, whose room the checks see to; "most g" multiplies every case.
 *
 * @throws PanError `input-missing` where the cheapest is asked for and nothing has a price
 */
export const figureOf = ({ name }: Pick<Goal, 'name'>, { design, freedoms, values }: Chosen): number => {
  switch (name) {
    case 'least depth':
      return Math.max(...design.pan.floor.map(([, down]) => down));
    case 'most oil':
      return design.oil.fill / 1e6;
    case 'most g':
      return values[freedoms.findIndex(({ name }) => name === SEVERITY)] ?? 1;
    case 'least metal':
      return sum(partsOf(design), (part) => part.mass);
    case 'cheapest':
      return priceOf(design);
    case 'least change':
      return freedoms.reduce(
        (all, { kind, now }, i) => all + Math.abs((values[i] as number) - now) / CHANGE[kind],
        0,
      );
  }
};

const partsOf = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  const panels = design.pan.notches.length > 0 ? panelsOf(model) : [];
  return cutParts(design, model.profile, platesOf(model), panels);
};

const sum = (parts: readonly Part[], of: (part: Part) => number): number =>
  parts.reduce((all, part) => all + part.quantity * of(part), 0);

const seamsOf = (design: Design, parts: readonly Part[]): readonly Seam[] => {
  const model = buildPan(design);
  return panSeams(model, panSkin(model), parts);
};

/** What `costOf` of the cut set sums, but for the offcuts: sheet by the weight of the parts, which needs no layout. */
const priceOf = (design: Design): number => {
  const { prices } = design;
  const parts = partsOf(design);
  const welds = prices.weldPerMetre !== null || prices.minutesPerWeldMetre !== null;
  const work = countedWork(parts, welds ? seamsOf(design, parts) : []);
  const { lines, priced } = billLines(prices, { work, sheetMass: work.mass });
  if (!lines.some(({ id, amount }) => id !== 'bought_in' && amount !== null)) {
    throw new PanError({
      code: 'input-missing',
      path: ['prices'],
      message: 'The cheapest pan was asked for, and the design has no prices.',
      expected: 'prices.sheet_per_kg, prices.cut_per_metre',
      advice: 'Give at least one of them, or ask for least metal.',
    });
  }
  return priced;
};

/** Goals told from the values alone, without building the pan. */
export const isQuick = (goal: GoalName): boolean => goal !== 'least metal' && goal !== 'cheapest';
