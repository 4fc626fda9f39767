import { PanError } from 'pan-core';
import type { Given, Screen } from './command.js';
import { type OptionValue, optionQuantity, within } from './option-quantity.js';

const MM3_PER_L = 1e6;

/** `--in-pan` in mm³; null where it was not given. A bare number is litres, except for people who use inches. */
export const readInPan = async ({ options }: Given, { units }: Screen): Promise<OptionValue | null> =>
  within(await optionQuantity(options, 'in-pan', 'volume', units === 'mm' ? 'L' : null), 'in-pan', {
    most: 100,
    unit: 'L',
    size: MM3_PER_L,
    advice: 'Give what is in the pan, such as "5 L".',
  });

/** A quantity that came from an option is complained of there, not in the file; null where none was typed. */
export const asTyped = <T>(option: string | null, act: () => T): T => {
  try {
    return act();
  } catch (error) {
    if (option === null || !(error instanceof PanError)) throw error;
    throw new PanError(
      error.problems.map((problem) =>
        problem.code === 'oil-quantity'
          ? { ...problem, code: 'input-option', path: [], message: `--${option}: ${problem.message}` }
          : problem,
      ),
    );
  }
};
