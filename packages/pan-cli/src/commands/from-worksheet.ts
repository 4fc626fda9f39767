import { PanError, worksheetParts } from 'pan-core';
import { parseDocument } from 'yaml';
import { readDesignText } from '../read/index.js';
import type { Screen } from './command.js';
import { measuredFromOptions } from './measured.js';
import { measurements } from './measurements.js';
import { starterText } from './starter.js';
import {
  type Answers,
  answerLines,
  answerLists,
  answerRefusal,
  fileAnswers,
  setAnswers,
} from './worksheet-answers.js';

type Options = Readonly<Record<string, string | true | undefined>>;

/** Rows of the worksheet that also stand among the ten measurements a starter is made from. */
const SHARED: Readonly<Record<string, string>> = {
  'engine.rail.length': 'rail-length',
  'engine.rail.width': 'rail-width',
  'engine.crank.centre_above_rail': 'crank-centre',
  'engine.crank.stroke': 'stroke',
  'engine.crank.big_end_reach': 'big-end',
  'engine.tilt.nose_up': 'nose-up',
  'chassis.ground': 'ground',
};

/** What is answered by a file and by options, and what a terminal adds to it. */
const gather = async (options: Options, screen: Screen): Promise<Answers> => {
  const parts = worksheetParts(screen.units);
  const rows = parts.flatMap((part) => part.rows);
  const { answers: file, set } = options;
  const given: Answers = new Map([
    ...(typeof file === 'string' ? await fileAnswers(file, rows) : []),
    ...(typeof set === 'string' ? setAnswers(set, rows) : []),
  ]);
  if (typeof file === 'string' || typeof set === 'string') return given;
  if (!screen.interactive)
    throw answerRefusal(
      'There is no terminal to ask the rows of the worksheet on.',
      'Give --answers FILE with lines such as engine.rail.length: 690, or --set engine.rail.length=690 for each.',
    );
  screen.tell('The rows of the worksheet, in its order. Enter alone leaves one out. Ctrl-C stops.\n');
  return (await import('./ask-worksheet.js')).askRows(parts, given, screen.tell);
};

/**
 * A starter design with the answers of a worksheet put in; what is not on it comes from options, as for the ten
 * measurements. It reads without a problem, or is not written; what was typed is then shown, to be kept.
 */
export const worksheetDesign = async (title: string, options: Options, screen: Screen): Promise<string> => {
  const answers = await gather(options, screen);
  try {
    return await designOf(title, answers, options, screen);
  } catch (error) {
    if (error instanceof PanError && options.answers === undefined && options.set === undefined)
      screen.tell(`Your answers, as lines for --answers FILE:\n${answerLines(answers)}`);
    throw error;
  }
};

const designOf = async (
  title: string,
  answers: Answers,
  options: Options,
  screen: Screen,
): Promise<string> => {
  const said = answers.get('units');
  const units = said === 'in' || said === 'mm' ? said : screen.units;
  const shared = Object.entries(SHARED).flatMap(([key, flag]) =>
    answers.has(key)
      ? [[flag, String(answers.get(key)).replace(key === 'chassis.ground' ? /^-/ : /^$/, '')]]
      : [],
  );
  const given = { ...Object.fromEntries(shared), ...options };
  const missing = measurements.some(({ flag }) => given[flag] === undefined);
  const measured =
    missing && screen.interactive
      ? await (await import('./ask.js')).askMeasurements(given, units, screen.tell)
      : measuredFromOptions(given, units);
  const document = parseDocument(starterText(title, measured, units));
  const single = [...answers].filter(([key]) => !key.includes('[') && !(key in SHARED) && key !== 'units');
  for (const [key, value] of [...single, ...answerLists(answers)])
    document.setIn(key.split('.'), document.createNode(value));
  const text = document.toString({ lineWidth: 0 });
  await readDesignText(text);
  return text;
};
