import { checkDesign, groundsOf } from 'pan-core/check/index.js';
import { describe, expect, it } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';

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
});
