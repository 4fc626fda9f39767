import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  buildPan,
  createOilSystem,
  inventoryOf,
  mouthCase,
  type OilAnswer,
  type OilSystem,
  oilIn,
  restAnswer,
} from 'pan-core';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { PageData } from './data.js';
import { type OilFound, oilSignal } from './oil.js';

/** Which way a section is cut: along the car, across it, or level with the rail. */
export type SectionWay = 'none' | 'along' | 'across' | 'level';

/** What the sections of the page share, and all that they share. */
export interface PageState {
  readonly data: PageData;
  /** The pan ready for oil. */
  readonly system: OilSystem;
  /** Oil of the running engine at rest. */
  readonly restNow: OilAnswer;
  /** The manoeuvre that covers the mouth least. */
  readonly worst: { readonly name: string; readonly answer: OilAnswer } | null;
  /** Oil at the controls' load and fill. */
  readonly oil: ReadonlySignal<OilFound>;
  readonly units: Signal<'mm' | 'in'>;
  /** Load of the car, g: braking is negative; a left turn is positive. */
  readonly forward: Signal<number>;
  readonly left: Signal<number>;
  /** Uphill, degrees. */
  readonly grade: Signal<number>;
  /** Oil in the pan, L. */
  readonly inPan: Signal<number>;
  readonly gating: Signal<'held' | 'settled'>;
  readonly section: Signal<SectionWay>;
  /** Where it is cut: 0 to 1 of the pan. */
  readonly sectionAt: Signal<number>;
  /** How far the parts stand apart, 0 to 1. */
  readonly spread: Signal<number>;
  /** Name of the clearance that is pointed at. */
  readonly clearance: Signal<string | null>;
  /** The step of welding that is marked, from 1; 0 marks none. */
  readonly weldStep: Signal<number>;
  /** Where the solid is seen from and looked at, mm; null until it was turned. */
  readonly camera: Signal<readonly number[] | null>;
  readonly surgeCase: Signal<number>;
  /** s; null until it was moved: then the moment of least oil over the mouth. */
  readonly surgeTime: Signal<number | null>;
}

/** The case with the least over the mouth, each with the oil that its engine speed leaves in the pan. */
const worstCase = ({ design }: PageData, system: OilSystem): PageState['worst'] =>
  design.manoeuvres
    .map((manoeuvre) =>
      mouthCase(system, manoeuvre, [inventoryOf(oilIn(design.oil, manoeuvre)).runningInPan]),
    )
    .flatMap(({ manoeuvre, held, settled }) =>
      [held, settled].map((answer) => ({ name: manoeuvre.name, answer })),
    )
    .reduce<PageState['worst']>(
      (a, b) => (a === null || b.answer.pickup.submergence < a.answer.pickup.submergence ? b : a),
      null,
    );

/** The page as it opens: running oil, level road, no load. */
export const pageState = (data: PageData): PageState => {
  const system = createOilSystem(buildPan(data.design));
  const litres = data.check.oil.running_in_pan_L;
  const controls = { forward: signal(0), left: signal(0), grade: signal(0), inPan: signal(litres) };
  return {
    data,
    system,
    restNow: restAnswer(system, litres * 1e6),
    worst: worstCase(data, system),
    ...controls,
    oil: oilSignal(data.design, system, controls),
    units: signal('mm'),
    gating: signal('held'),
    section: signal('none'),
    sectionAt: signal(0.5),
    spread: signal(0),
    clearance: signal(null),
    weldStep: signal(0),
    camera: signal(null),
    surgeCase: signal(0),
    surgeTime: signal(null),
  };
};

const StateContext = createContext<PageState | null>(null);

export const StateProvider = StateContext.Provider;

export const usePage = (): PageState => {
  const state = useContext(StateContext);
  if (state === null) throw new Error('a section stands outside the page');
  return state;
};
