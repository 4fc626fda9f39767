import {
  type Design,
  kinematicViscosity,
  logPath,
  type NamedPath,
  namedManoeuvre,
  nearestWord,
  oilProperties,
  PanError,
  type PresetName,
  type Problem,
  presetManoeuvres,
  type SurgeOptions,
} from 'pan-core';
import { readLogFile } from '../read/log-file.js';
import type { Given } from './command.js';
import { type OptionValue, optionQuantity, within } from './option-quantity.js';
import { returnPlace } from './return-option.js';
import { readRpm } from './rpm.js';

const MM3_PER_L = 1e6;
const MM_S2_PER_G = 9806.65;
const COLDEST = -40;
const HOTTEST = 170;
const DEGREES = /^([-+]?\d+(?:\.\d+)?)\s*(?:°|deg)?\s*([CF])?$/i;

export const LOG_UNITS = ['g', 'm/s2'] as const;

const problem = (message: string, advice: string, found?: string): Problem => ({
  code: 'input-option',
  path: [],
  message,
  advice,
  found,
});

const text = ({ options }: Given, name: string): string | null => {
  const typed = options[name];
  return typeof typed === 'string' ? typed : null;
};

/** Everything that can be told wrong before the design is read. */
export interface SurgeChoice {
  readonly fill: OptionValue | null;
  /** °C */
  readonly celsius: number | null;
  readonly returnTo: string | null;
  /** Mean stay of oil in the engine, s. */
  readonly delay: OptionValue | null;
  /** 0–1 */
  readonly doorLeak: OptionValue | null;
  readonly rpm: number | undefined;
  readonly preset: PresetName | null;
  readonly manoeuvre: string | null;
  /** The log's path, read already; null without a log. */
  readonly log: NamedPath | null;
}

/** @throws PanError `input-option` with everything that is wrong with the options */
export const readSurgeChoice = async (given: Given): Promise<SurgeChoice> => {
  const problems: Problem[] = [];
  const fill = within(await optionQuantity(given.options, 'fill', 'volume', 'L'), 'fill', {
    most: 100,
    unit: 'L',
    size: MM3_PER_L,
    advice: 'Give what is poured in, such as "7 L".',
  });
  if (fill?.problem !== undefined) problems.push(fill.problem);
  const delay = within(await optionQuantity(given.options, 'delay', 'time', 's'), 'delay', {
    most: 60,
    unit: 's',
    size: 1,
    advice: 'Give the mean time from mouth back to pan, such as "2 s".',
  });
  const doorLeak = within(await optionQuantity(given.options, 'door-leak', 'share', null), 'door-leak', {
    most: 100,
    unit: '%',
    size: 0.01,
    advice: 'Give a share of the door’s area, such as "2 %".',
  });
  const rpm = readRpm(given);
  for (const one of [delay, doorLeak, rpm]) if (one?.problem !== undefined) problems.push(one.problem);
  const celsius = readCelsius(given, problems);
  const [log, preset, manoeuvre] = [text(given, 'log'), text(given, 'preset'), text(given, 'case')];
  if ([log, preset, manoeuvre].filter((one) => one !== null).length > 1) {
    problems.push(
      problem(
        '--log, --preset and --case each say what to drive.',
        'Give one of them, or none for all cases.',
      ),
    );
  }
  const columns = ['time', 'forward', 'left'].map((name) => text(given, name));
  if (log === null && (columns.some((c) => c !== null) || text(given, 'log-unit') !== null))
    problems.push(
      problem('--time, --forward, --left and --log-unit belong to a log.', 'Give --log FILE too.'),
    );
  const [time, forward, left] = columns;
  if (log !== null && (time == null || forward == null || left == null)) {
    problems.push(
      problem(
        '--log needs the names of its columns.',
        'Give --time, --forward and --left as the file names them; --left=-lat reads "lat" the other way round.',
      ),
    );
  }
  if (problems.length > 0) throw new PanError(problems);
  return {
    fill,
    celsius,
    returnTo: text(given, 'return'),
    delay,
    doorLeak,
    rpm: rpm.value,
    preset: preset as PresetName | null,
    manoeuvre,
    log:
      log === null
        ? null
        : {
            name: log,
            path: logPath(
              await readLogFile(log, {
                time: time as string,
                forward: forward as string,
                left: left as string,
                unit: text(given, 'log-unit') === 'm/s2' ? 1000 / MM_S2_PER_G : 1,
              }),
            ),
          },
  };
};

const readCelsius = (given: Given, problems: Problem[]): number | null => {
  const typed = text(given, 'oil-temp');
  if (typed === null) return null;
  const found = DEGREES.exec(typed.trim());
  const value = Number(found?.[1] ?? Number.NaN);
  const celsius = found?.[2]?.toUpperCase() === 'F' ? ((value - 32) * 5) / 9 : value;
  if (celsius >= COLDEST && celsius <= HOTTEST) return celsius;
  problems.push(
    problem(
      `--oil-temp must be a temperature from ${COLDEST} to ${HOTTEST} °C.`,
      'Give one such as 100, "20 C" or "210 F".',
      typed.slice(0, 40),
    ),
  );
  return null;
};

/** The loads to run: the log, a preset's, one case of the design or all of them. */
export const loadsOf = (design: Design, { log, preset, manoeuvre }: SurgeChoice): readonly NamedPath[] => {
  if (log !== null) return [log];
  if (preset !== null) return presetManoeuvres(preset).map(namedManoeuvre);
  if (manoeuvre === null) return design.manoeuvres.map(namedManoeuvre);
  const chosen = design.manoeuvres.filter(({ name }) => name === manoeuvre);
  if (chosen.length > 0) return chosen.map(namedManoeuvre);
  const names = design.manoeuvres.map(({ name }) => name);
  const near = nearestWord(manoeuvre, names);
  throw new PanError(
    problem(
      'The design has no manoeuvre of that name.',
      near === null ? `It has: ${names.join(', ')}.` : `Did you mean "${near}"?`,
      manoeuvre.slice(0, 80),
    ),
  );
};

export const surgeOptionsOf = (design: Design, choice: SurgeChoice): SurgeOptions => {
  const { fill, celsius, returnTo, delay, doorLeak, rpm } = choice;
  return {
    ...(fill?.value === undefined ? {} : { poured: fill.value }),
    ...(rpm === undefined ? {} : { rpm }),
    ...(delay?.value === undefined ? {} : { returnSeconds: delay.value }),
    ...(doorLeak?.value === undefined ? {} : { doorLeak: doorLeak.value }),
    ...(celsius === null ? {} : { viscosity: kinematicViscosity(oilProperties(design.oil), celsius) }),
    ...(returnTo === null ? {} : { returnTo: returnPlace(returnTo, design) }),
  };
};
