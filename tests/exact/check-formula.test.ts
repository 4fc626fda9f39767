import { checkDesign, formulaOf } from 'pan-core';
import { describe, expect, it } from 'vitest';
import { exampleText, read } from '../design-text.js';

describe('the formula behind each number', () => {
  it.each(['demo', 'two-wings', 'windage-tray'])(
    'is told with its source for every check of %s',
    async (name) => {
      const { checks } = checkDesign(await read(exampleText(name)));
      for (const { id } of checks) {
        const { formula, source } = formulaOf(id);
        expect(formula, id).toMatch(/\.$/);
        expect(source, id).not.toBe('');
      }
    },
  );

  it('is the row whose beginning fits, and the last row where none does', () => {
    expect(formulaOf('mouth_settled_hard_stop').formula).toMatch(/weeps open/);
    expect(formulaOf('mouth_depth').source).toMatch(/9\.8/);
    expect(formulaOf('limit_g').formula).toMatch(/ramp/);
    expect(formulaOf('no such number').source).toMatch(/^exact geometry/);
  });
});
