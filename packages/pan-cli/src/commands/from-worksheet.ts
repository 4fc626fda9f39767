import { PanError, type WorksheetRow, worksheetParts } from 'pan-core';
import { parseDocument } from 'yaml';
import { readDesignText } from '../read/index.js';
import { readSource } from '../read/source.js';
import type { LengthUnits, Screen } from './command.js';
import { measuredFromOptions } from './measured.js';
import { measurements } from './measurements.js';
import { starterText } from './starter.js';

type Answers = Readonly<Record<string, unknown>>;
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

/** Rows with one answer each; lists of things are written in the file itself. */
const askedRows = (units: LengthUnits): readonly WorksheetRow[] =>
  worksheetParts(units)
    .flatMap(({ rows }) => rows)
    .filter(({ key }) => !key.includes('[]'));

const refusal = (message: string, advice: string): PanError =>
  new PanError({ code: 'input-option', path: [], message, advice });

/** Answers from a file of lines such as `engine.rail.length: 690`. */
const fileAnswers = async (file: string, rows: readonly WorksheetRow[]): Promise<Answers> => {
  const document = parseDocument(await readSource(file), { prettyErrors: false, stringKeys: true });
  const raw: unknown = document.errors.length > 0 ? null : document.toJS({ maxAliasCount: 0 });
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    throw refusal(
      `--answers ${file} holds no lines of key: value.`,
      'Write lines such as engine.rail.length: 690',
    );
  const strange = Object.keys(raw).find((key) => !rows.some((row) => row.key === key));
  if (strange !== undefined)
    throw refusal(
      `--answers ${file}: ${strange.slice(0, 60)} is no row of the worksheet.`,
      'Write the key as the worksheet has it in small letters; lists of things go into the design file.',
    );
  return raw as Answers;
};

const askAnswers = async (rows: readonly WorksheetRow[], { tell }: Screen): Promise<Answers> => {
  const { input } = await import('@inquirer/prompts');
  tell('The rows of the worksheet, in its order. Enter alone leaves one out. Ctrl-C stops.\n');
  const answers: Record<string, unknown> = {};
  for (const [i, { key, about }] of rows.entries()) {
    const typed = (await input({ message: `${i + 1}/${rows.length}  ${about} (${key}):` })).trim();
    if (typed !== '') answers[key] = parseDocument(typed).toJS({ maxAliasCount: 0 });
  }
  return answers;
};

/**
 * A starter design with the answers of a worksheet put in; what is not on it comes from options, as for the ten
 * measurements. It reads without a problem, or is not written.
 */
export const worksheetDesign = async (title: string, options: Options, screen: Screen): Promise<string> => {
  const rows = askedRows(screen.units);
  const { answers: file } = options;
  if (typeof file !== 'string' && !screen.interactive)
    throw refusal(
      'There is no terminal to ask the rows of the worksheet on.',
      'Give --answers FILE with lines such as engine.rail.length: 690',
    );
  const answers = typeof file === 'string' ? await fileAnswers(file, rows) : await askAnswers(rows, screen);
  const units = answers.units === 'in' || answers.units === 'mm' ? answers.units : screen.units;
  const shared = Object.entries(SHARED).flatMap(([key, flag]) =>
    answers[key] === undefined
      ? []
      : [[flag, String(answers[key]).replace(key === 'chassis.ground' ? /^-/ : /^$/, '')]],
  );
  const given = { ...Object.fromEntries(shared), ...options };
  const missing = measurements.some(({ flag }) => given[flag] === undefined);
  const measured =
    missing && screen.interactive
      ? await (await import('./ask.js')).askMeasurements(given, units, screen.tell)
      : measuredFromOptions(given, units);
  const document = parseDocument(starterText(title, measured, units));
  for (const { key } of rows) {
    if (answers[key] === undefined || key in SHARED || key === 'units') continue;
    document.setIn(key.split('.'), document.createNode(answers[key]));
  }
  const text = document.toString({ lineWidth: 0 });
  await readDesignText(text);
  return text;
};
