import { basename } from 'node:path';
import { PanError } from 'pan-core';
import { holdStop, refuseStandingFile } from '../write/index.js';
import type { Given, Run, Screen } from './command.js';
import { writeWithSchema } from './editor-schema.js';
import { exampleText } from './example-file.js';
import { measuredFromOptions } from './measured.js';
import { measurements } from './measurements.js';
import { starterText } from './starter.js';

const textOption = (value: string | true | undefined): string | undefined =>
  typeof value === 'string' ? value : undefined;

const refuseMixture = (from: string, flags: readonly string[]): void => {
  if (flags.length === 0) return;
  throw new PanError({
    code: 'input-option',
    path: [],
    message: `--from ${from} brings its own measurements, and ${flags.map((flag) => `--${flag}`).join(', ')} would be lost.`,
    advice: 'Leave out --from, or edit the file afterwards.',
  });
};

const measuredText = async (
  { file, options }: Given,
  screen: Screen,
  flags: readonly string[],
): Promise<string> => {
  const title = textOption(options.title) ?? basename(file).replace(/\.ya?ml$/i, '');
  if (flags.length < measurements.length && screen.interactive) {
    const { askMeasurements } = await import('./ask.js');
    return starterText(title, await askMeasurements(options, screen.units, screen.tell), screen.units);
  }
  if (flags.length === 0) {
    throw new PanError({
      code: 'input-option',
      path: [],
      message: 'There is no terminal to ask the ten measurements on.',
      advice: `Give --from demo, or all of: ${measurements.map((one) => `--${one.flag}`).join(', ')}.`,
    });
  }
  return starterText(title, measuredFromOptions(options, screen.units), screen.units);
};

const designText = async (given: Given, screen: Screen, flags: readonly string[]): Promise<string> => {
  const { file, options } = given;
  const from = textOption(options.from);
  const title = textOption(options.title);
  const sheet = options['from-worksheet'] === true;
  if (from !== undefined && sheet) refuseMixture(from, ['from-worksheet']);
  if (from !== undefined) return exampleText(from, title);
  if (!sheet) return measuredText(given, screen, flags);
  const { worksheetDesign } = await import('./from-worksheet.js');
  return worksheetDesign(title ?? basename(file).replace(/\.ya?ml$/i, ''), options, screen);
};

/**
 * Writes a starter design, and beside it the schema its first line names for editors; a file that is there already
 * stays unless --replace is given.
 */
export const newDesign: Run = async (given, screen) => {
  const { file, options } = given;
  const replace = options.replace === true;
  // Before ten questions are asked in vain.
  refuseStandingFile(file, replace);
  const from = textOption(options.from);
  const flags = measurements.map((one) => one.flag).filter((flag) => options[flag] !== undefined);
  if (from !== undefined) refuseMixture(from, flags);
  const text = await designText(given, screen, flags);
  let schema = '';
  await holdStop(() => {
    schema = writeWithSchema(file, text, replace);
  });
  if (screen.json) screen.write(`${JSON.stringify({ file, from: from ?? null, schema }, null, 2)}\n`);
  screen.tell(`Wrote ${file}. Next: pan check ${file}\n`);
  return 0;
};
