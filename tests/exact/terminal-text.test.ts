import { plain } from 'pan-cli/terminal/plain.js';
import { pair, quantity, sentence } from 'pan-cli/terminal/quantity.js';
import { colourWanted, screenWidth } from 'pan-cli/terminal/screen.js';
import { columns, hang, wrap } from 'pan-cli/terminal/wrap.js';
import { expect, test } from 'vitest';

test.each([
  [112.6, 'mm', 'mm', '113 mm'],
  [-12.4, 'mm', 'mm', '−12 mm'],
  [-0.0001, 'mm', 'mm', '0 mm'],
  [0.4, 'mm', 'mm', '0.4 mm'],
  [-0.04, 'mm', 'mm', '−0.04 mm'],
  [5.2349, 'L', 'mm', '5.23 L'],
  [1.1, 'g', 'mm', '1.10 g'],
  [3, 'deg', 'mm', '3.0 deg'],
  [12, '', 'mm', '12'],
  [3, '1', 'mm', '3'],
  [250.4, 'mm2', 'mm', '250 mm²'],
  // 1 in = 25.4 mm exactly (international inch, 1959)
  [25.4, 'mm', 'in', '1.00 in'],
  // 1 US liquid quart = 57.75 in³ = 0.946352946 L (NIST Handbook 44, Appendix C)
  [0.946352946, 'L', 'in', '1.00 US qt'],
  [2.5, 's', 'in', '2.5 s'],
] as const)('%s %s shown in %s reads %s', (value, unit, units, text) => {
  expect(quantity(value, unit, units)).toBe(text);
});

test.each([
  [31.2, 25, 'mm', ['31 mm', '25 mm']],
  [99.6, 100, 'mm', ['99.6 mm', '100 mm']],
  [5.96, 6, 'mm', ['5.96 mm', '6 mm']],
  [10, 10, 'mm', ['10 mm', '10 mm']],
  [3.504, 3.5, 'L', ['3.504 L', '3.500 L']],
] as const)('%s against %s %s can be told apart', (value, limit, unit, texts) => {
  expect(pair(value, limit, unit, 'mm')).toEqual(texts);
});

test.each([
  ['It clears by 25.4 mm.', 'It clears by 1.00 in.'],
  ['Between 254 to 508 mm.', 'Between 10.00 to 20.00 in.'],
  ['By 127 ± 2.54 mm, or 0.946352946 L more.', 'By 5.00 ± 0.10 in, or 1.00 US qt more.'],
  ['Lower it by −12.7 mm.', 'Lower it by −0.50 in.'],
  ['An area of 100 mm² and a speed of 3 mm/s stay.', 'An area of 100 mm² and a speed of 3 mm/s stay.'],
  ['Near x 254, y −25.4, z -50.8 mm.', 'Near x 10.00, y −1.00, z −2.00 in.'],
  ['From x = 25.4 to 50.8 mm.', 'From x = 1.00 to 2.00 in.'],
  ['Bolts M8 x 25 stay.', 'Bolts M8 x 25 stay.'],
])('%s', (metric, inches) => {
  expect(sentence(metric, 'in')).toBe(inches);
  expect(sentence(metric, 'mm')).toBe(metric);
});

test.each([
  ['The lid to x = 76.2 (lasts 0.5 s) holds it.', '76.2 mm (lasts', '3.00 in (lasts'],
  ['Full to the lip at x = 254.', 'at x = 254 mm.', 'at x = 10.00 in.'],
  ['A hole near x 254, y -50.8 lets it out.', 'x 254, y -50.8 mm lets', 'x 10.00, y −2.00 in lets'],
])('a place without a unit gets it: %s', (text, metric, inches) => {
  expect(sentence(text, 'mm')).toContain(metric);
  expect(sentence(text, 'in')).toContain(inches);
});

test('lines break at spaces, never between a number and its unit, and never pass the width', () => {
  const text = 'Move the mouth 45 mm forward, or pour 0.6 US qt more, or brake at 0.7 g at most.';
  for (let width = 12; width <= 90; width++) {
    const lines = wrap(text, width);
    expect(lines.join(' ')).toBe(text);
    for (const line of lines) {
      expect(columns(line)).toBeLessThanOrEqual(width);
      expect(line).not.toMatch(/\d$/);
      expect(line).not.toMatch(/US$/);
    }
  }
});

test('a word longer than a line is cut, and nothing is lost', () => {
  expect(wrap('ab cdefghijklmnop q', 5)).toEqual(['ab', 'cdefg', 'hijkl', 'mnop', 'q']);
  expect(wrap('', 10)).toEqual([]);
});

test('later lines stand under the first word', () => {
  expect(hang('  > ', 'weld the corner and grind it', 20)).toEqual([
    '  > weld the corner',
    '    and grind it',
  ]);
});

test('text from a file cannot steer the terminal', () => {
  const shown = plain('red\u001b[31m title\u0007\nsecond \u202Eline\u2028third\u009b2J');
  expect(shown).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
  expect(shown).toContain('red');
  expect(plain('x'.repeat(1_000_000), 50)).toBe(`${'x'.repeat(49)}…`);
});

test.each([
  [undefined, {}, 80],
  [undefined, { COLUMNS: '120' }, 100],
  [undefined, { COLUMNS: '90' }, 90],
  [undefined, { COLUMNS: 'wide' }, 80],
  [72, { COLUMNS: '90' }, 72],
  [20, {}, 60],
  [400, {}, 100],
] as const)('a terminal %s wide with %j is written to %s columns', (terminal, env, width) => {
  expect(screenWidth(terminal, env)).toBe(width);
});

test.each([
  [true, {}, true],
  [false, {}, false],
  [true, { NO_COLOR: '1' }, false],
  // An empty NO_COLOR does not count, as its convention says (no-color.org).
  [true, { NO_COLOR: '' }, true],
  [true, { TERM: 'dumb' }, false],
] as const)('on a terminal: %s, with %j, colour: %s', (isTerminal, env, wanted) => {
  expect(colourWanted(isTerminal, env)).toBe(wanted);
});
