import { beforeAll, describe, expect, it } from 'vitest';
import { changed, exampleText } from '../design-text.js';
import { buildPan, inFile, runPan } from './pan-command.js';

const HELD_UP = ', held_up: 1.2 L';
const demo = exampleText('demo');
const left = changed(demo, HELD_UP, '');

const screenOf = (text: string, ...args: readonly string[]): string =>
  inFile(text, (file) => runPan([args[0] ?? '', file, ...args.slice(1)]).out);

const restsOf = (text: string, ...args: readonly string[]) =>
  JSON.parse(screenOf(text, ...args, '--json')).rests_on;

describe('how sure each printed number is', () => {
  beforeAll(buildPan);

  it.each([['check'], ['level'], ['level', '--braking', '0.8 g'], ['limits', '--directions', '4']])(
    'pan %s says what a mark means wherever one stands',
    (...args) => {
      const out = screenOf(left, ...args);
      expect(out).toMatch(/\d [a-z]+[~*]/);
      expect(out).toMatch(/^MARKS .*\n +~ {2}leans on a value that was assumed, listed under ASSUMED/m);
      expect(out).toMatch(/^ASSUMED /m);
    },
  );

  it('marks the litres of a running engine until the file says what the engine holds up', () => {
    const load = ['level', '--braking', '0.8 g'];
    expect(screenOf(left, ...load)).toMatch(/^[\d.]+ L~ in the pan/);
    expect(screenOf(demo, ...load)).toMatch(/^[\d.]+ L in the pan/);
    expect(screenOf(left, 'check')).toMatch(/Running: [\d.]+ L~ in the pan/);
    expect(screenOf(demo, 'check')).toMatch(/Running: [\d.]+ L in the pan/);
  });

  it('takes no fill as assumed that was typed in, and no model for oil at rest', () => {
    const typed = restsOf(left, 'level', '--braking', '0.8 g', '--in-pan', '5 L');
    expect(typed.in_pan_L).toEqual({ assumed: [], model: null });
    expect(typed.loaded_surface_mm.model).toMatch(/infinitely slowly/);
    expect(restsOf(left, 'level').surface_mm.model).toBeNull();
    expect(restsOf(left, 'limits', '--directions', '4').limit_g.assumed).toContain('oil.held_up');
    expect(restsOf(demo, 'limits', '--directions', '4').limit_g.assumed).not.toContain('oil.held_up');
  });
});
