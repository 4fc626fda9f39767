import { checkDesign, groundsOf } from 'pan-core/check/index.js';
import { describe, expect, it } from 'vitest';
import { changed, exampleText, read, SMALLEST } from '../design-text.js';

describe('what a number leans on', async () => {
  const demo = exampleText('demo');
  const groundsIn = async (text: string, id: string) => checkDesign(await read(text)).rests_on[id];

  it('names held-up oil where it was assumed, and not where the file gives it', async () => {
    const given = await groundsIn(demo, 'running_level');
    expect(given?.assumed).not.toContain('oil.held_up');
    const left = await groundsIn(changed(demo, ', held_up: 1.2 L', ''), 'running_level');
    expect(left?.assumed).toContain('oil.held_up');
  });

  it('tells a model from geometry, and a rule for water from both', () => {
    expect(groundsOf('running_level', []).model).toBeNull();
    expect(groundsOf('mouth_held_hard_stop', []).model).toMatch(/infinitely slowly/);
    expect(groundsOf('mouth_depth', []).model).toMatch(/water/);
    expect(groundsOf('hole_to_bend', [])).toEqual({ assumed: [], model: null });
  });

  it('names held-up oil behind the litres and the level of a running engine, not of a stopped one', async () => {
    const without = checkDesign(await read(changed(demo, ', held_up: 1.2 L', ''))).rests_on;
    const within = checkDesign(await read(demo)).rests_on;
    expect(without['oil.running_in_pan_L']?.assumed).toEqual(['oil.held_up']);
    expect(within['oil.running_in_pan_L']?.assumed).toEqual([]);
    expect(without['levels.running_mm']?.assumed).toContain('oil.held_up');
    expect(within['levels.running_mm']?.assumed).not.toContain('oil.held_up');
    expect(without['levels.stopped_mm']?.assumed).not.toContain('oil.held_up');
  });

  it('names the sheet behind its rows where the file leaves it out', async () => {
    const sheet = checkDesign(await read(SMALLEST)).rests_on;
    expect(sheet.bend_radius?.assumed).toEqual([
      'pan.sheet.material',
      'pan.sheet.thickness',
      'pan.sheet.bend_radius',
    ]);
    expect((await groundsIn(demo, 'bend_radius'))?.assumed).toEqual([]);
    expect(groundsOf('shortest_flange', (await read(SMALLEST)).assumed).assumed).toContain(
      'pan.joints.allowance',
    );
  });
});
