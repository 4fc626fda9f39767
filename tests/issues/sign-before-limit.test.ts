import { checkScreen } from 'pan-cli/terminal/check-screen.js';
import { checkDesign } from 'pan-core/check/index.js';
import { expect, test } from 'vitest';
import { exampleText, read } from '../design-text.js';
import { plainScreen } from '../plain-screen.js';

// A limit as long as "≤ 0.40 bar" stood right against the sign of the value before it: "~*≤ 0.40 bar".
test.each([60, 80, 120])(
  'between a sign and what is wanted stands a space, %s columns wide',
  async (width) => {
    const report = checkDesign(await read(exampleText('demo')));
    const lines = checkScreen(report, plainScreen(width)).split('\n');
    expect(lines.filter((line) => /[~*][≤≥]/.test(line))).toEqual([]);
    expect(lines.filter((line) => /[~*]\s+[≤≥]/.test(line)).length).toBeGreaterThan(10);
    expect(lines.filter((line) => [...line].length > width)).toEqual([]);
  },
);
