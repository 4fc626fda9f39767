import type { Assumption, Manoeuvre } from '../../design/index.js';
import { freeze } from '../../numeric/index.js';
import type { OilSystem } from '../answer.js';
import { type LoadPath, manoeuvrePath } from './load-path.js';
import { practiceNote } from './practice.js';
import { type SurgeOptions, type SurgeSettings, settingsFor } from './settings.js';
import { type SurgeRun, surge } from './surge.js';

/** One load and its answer; keys end in their unit. */
export interface SurgeCase {
  readonly name: string;
  /** Engine speed, and what runs and is drawn at it; null where not known. */
  readonly rpm: number | null;
  readonly in_pan_L: number;
  readonly pump_L_min: number | null;
  readonly load_s: number;
  /** With surfaces that swing after the load, and with surfaces that follow it at once; null: never bared. */
  readonly time_to_bare_s: number | null;
  readonly still_time_to_bare_s: number | null;
  /** Least depth of the mouth's rim under oil, negative when bared, and when. */
  readonly least_submergence_mm: number;
  readonly least_at_s: number;
  readonly still_least_submergence_mm: number;
  readonly bared_for_s: number;
  readonly time_to_recover_s: number | null;
  /** First-mode period of the mouth's bay at the start. */
  readonly period_s: number | null;
  /** false where the load lasts less than one such period. */
  readonly resolved: boolean;
  readonly passages: readonly {
    readonly name: string;
    readonly kind: string;
    readonly way: string;
    readonly forth_L: number;
    readonly back_L: number;
  }[];
  readonly oil_drift: number;
  readonly series: {
    readonly time_s: readonly number[];
    readonly forward_g: readonly number[];
    readonly left_g: readonly number[];
    readonly submergence_mm: readonly number[];
    readonly still_submergence_mm: readonly number[];
    readonly mouth_bay_L: readonly number[];
    readonly front_deg: readonly number[];
    readonly left_deg: readonly number[];
    readonly in_engine_L: readonly number[];
    readonly rooms: readonly { readonly name: string; readonly volume_L: readonly number[] }[];
  };
}

/** What became of the mouth in each manoeuvre, over time. */
export interface SurgeReport {
  readonly title: string;
  readonly in_pan_L: number;
  readonly viscosity_mm2_s: number;
  readonly pump_L_min: number | null;
  /** Place of the case that bares first, else of the one that comes nearest; null without cases. */
  readonly first: number | null;
  readonly cases: readonly SurgeCase[];
  /** false: stopped on the way, and the cases are not all there. */
  readonly finished: boolean;
  readonly not_modelled: readonly string[];
  readonly assumed: readonly Assumption[];
}

/** A load with a name, and the engine's speed in it, rev/min, where that is known. */
export interface NamedPath {
  readonly name: string;
  readonly rpm?: number;
  readonly path: LoadPath;
}

/** A manoeuvre of the design as a path of load under its name. */
export const namedManoeuvre = (manoeuvre: Manoeuvre): NamedPath => ({
  name: manoeuvre.name,
  ...(manoeuvre.rpm === undefined ? {} : { rpm: manoeuvre.rpm }),
  path: manoeuvrePath(manoeuvre),
});

/** What a run cannot tell, said wherever it is shown. */
export const notModelled: readonly string[] = Object.freeze([
  'Slosh is not solved: each bay’s surface is one plane that swings with its first mode. Waves, splash and oil flung off the crank are left out.',
  'A wave higher than its oil is deep is taken to break and come to rest; how soon is our choice.',
  'A load shorter than one period of the mouth’s bay is not resolved.',
  'Air drawn into the oil and froth are left out; the pump is taken to draw oil for as much of its mouth as is covered.',
  'Open space between two bays evens their levels out within some 20 ms; thin passages count as thin plates.',
]);

/**
 * Runs every load twice, with surfaces that swing and with surfaces that follow at once.
 *
 * @throws PanError as `surge`
 */
export const surgeReport = (
  system: OilSystem,
  loads: readonly NamedPath[],
  options: SurgeOptions = {},
): SurgeReport => {
  const { design } = system.model;
  const settings = settingsFor(design, options);
  const cases: SurgeCase[] = [];
  const whole = loads.reduce((sum, { path }) => sum + 2 * path.seconds, 0);
  let [done, finished] = [0, true];
  for (const { name, rpm, path } of loads) {
    const atSpeed: SurgeOptions = rpm === undefined ? options : { ...options, rpm };
    const run = (swings: boolean): SurgeRun => {
      const { progress } = options;
      const part = surge(system, path, {
        ...atSpeed,
        swings,
        ...(progress === undefined
          ? {}
          : { progress: (share: number) => progress((done + share * path.seconds) / whole) }),
      });
      done += path.seconds;
      finished = finished && part.finished;
      return part;
    };
    const swung = run(true);
    if (!finished) break;
    const still = run(false);
    if (!finished) break;
    cases.push(caseOf(name, path, settingsFor(design, atSpeed), atSpeed.rpm ?? null, swung, still));
  }
  return freeze({
    title: design.title,
    in_pan_L: settings.volume / 1e6,
    viscosity_mm2_s: settings.viscosity,
    pump_L_min: settings.pump === null ? null : (settings.pump * 60) / 1e6,
    first: firstOf(cases),
    cases,
    finished,
    not_modelled: notModelled,
    assumed: [
      ...settings.assumed,
      ...(loads.some(({ path }) => path.corners.length > 0)
        ? [practiceNote('rampSeconds'), practiceNote('afterSeconds')]
        : []),
    ],
  });
};

/** The case that bares soonest; where none does, the one with least over the mouth. */
const firstOf = (cases: readonly SurgeCase[]): number | null => {
  if (cases.length === 0) return null;
  const soon = (c: SurgeCase): number =>
    Math.min(
      c.time_to_bare_s ?? Number.POSITIVE_INFINITY,
      c.still_time_to_bare_s ?? Number.POSITIVE_INFINITY,
    );
  const least = (c: SurgeCase): number => Math.min(c.least_submergence_mm, c.still_least_submergence_mm);
  const order = cases
    .map((_, i) => i)
    .sort((a, b) => {
      const [one, other] = [cases[a] as SurgeCase, cases[b] as SurgeCase];
      const [s, t] = [soon(one), soon(other)];
      return s === t ? least(one) - least(other) : s < t ? -1 : 1;
    });
  return order[0] as number;
};

const litres = (a: Float64Array): readonly number[] => Array.from(a, (v) => rounded(v / 1e6, 1e6));
const rounded = (v: number, to: number): number => Math.round(v * to) / to + 0;
const degrees = (a: Float64Array): readonly number[] =>
  Array.from(a, (v) => rounded((v * 180) / Math.PI, 1e3));

const caseOf = (
  name: string,
  path: LoadPath,
  { volume, pump }: SurgeSettings,
  rpm: number | null,
  swung: SurgeRun,
  still: SurgeRun,
): SurgeCase => {
  const { series, cover } = swung;
  return {
    name,
    rpm,
    in_pan_L: volume / 1e6,
    pump_L_min: pump === null ? null : (pump * 60) / 1e6,
    load_s: path.loadedUntil,
    time_to_bare_s: cover.timeToBare,
    still_time_to_bare_s: still.cover.timeToBare,
    least_submergence_mm: cover.least,
    least_at_s: cover.leastAt,
    still_least_submergence_mm: still.cover.least,
    bared_for_s: cover.baredFor,
    time_to_recover_s: cover.timeToRecover,
    period_s: swung.period,
    resolved: swung.resolved,
    passages: swung.passages.map(({ name: passage, kind, way, forth, back }) => ({
      name: passage,
      kind,
      way,
      forth_L: forth / 1e6,
      back_L: back / 1e6,
    })),
    oil_drift: swung.drift,
    series: {
      time_s: Array.from(series.time, (v) => rounded(v, 1e6)),
      forward_g: Array.from(series.forward, (v) => rounded(v, 1e5)),
      left_g: Array.from(series.left, (v) => rounded(v, 1e5)),
      submergence_mm: Array.from(series.submergence, (v) => rounded(v, 1e3)),
      still_submergence_mm: Array.from(still.series.submergence, (v) => rounded(v, 1e3)),
      mouth_bay_L: litres(series.mouthBay),
      front_deg: degrees(series.riseFront),
      left_deg: degrees(series.riseLeft),
      in_engine_L: litres(series.inEngine),
      rooms: series.rooms.map((room) => ({ name: room.name, volume_L: litres(room.volume) })),
    },
  };
};
