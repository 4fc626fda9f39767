import { checkDesign } from 'pan-core/check/index.js';
import { describe, expect, it, test } from 'vitest';
import { exampleText, problemsIn, read } from '../design-text.js';

const withLimits = (name: string, limits: string): string =>
  `${exampleText(name).replace('limits: {}', '')}\nlimits: {${limits}}\n`;

describe('a limit for a check that does not exist is refused, not passed over', () => {
  it('names the nearest id, and the place', async () => {
    const [one] = await problemsIn(withLimits('demo', 'runing_level: 40 mm'));
    expect(one).toMatchObject({ code: 'input-key', path: ['limits', 'runing_level'] });
    expect(one?.advice).toContain('running_level');
  });
  it('knows the cases and obstacles of the design', async () => {
    const text = withLimits('demo', 'mouth_held_hard_stop: 5 mm, clear_drag_link: 12, draw_long_left: 2 s');
    expect((await read(text)).design.limits).toEqual({
      mouth_held_hard_stop: 5,
      clear_drag_link: 12,
      draw_long_left: 2,
    });
    const [one] = await problemsIn(withLimits('demo', 'clear_draglink: 12'));
    expect(one?.advice).toContain('clear_drag_link');
  });
  it('refuses a limit of another kind', async () => {
    const [one] = await problemsIn(withLimits('demo', 'running_level: 2 L'));
    expect(one).toMatchObject({ code: 'input-unit', path: ['limits', 'running_level'], unit: 'mm' });
  });
});

test.each(['demo', 'two-wings', 'two-piece', 'inches'])(
  'every limit of %s can be set in the unit it prints',
  async (name) => {
    const report = checkDesign(await read(exampleText(name)));
    const settable = report.checks.filter((c) => c.limit !== null && c.unit !== '1' && c.unit !== '');
    expect(settable.length).toBeGreaterThan(30);
    const limits = settable.map((c) => `${c.id}: ${c.limit}`).join(', ');
    const again = checkDesign(await read(withLimits(name, limits)));
    expect(again.checks.map((c) => [c.id, c.status])).toEqual(report.checks.map((c) => [c.id, c.status]));
  },
);
