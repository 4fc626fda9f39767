import { readDesign } from 'pan-core';
import { describe, expect, it } from 'vitest';
import { changed, exampleText, keyOf, placeIn, problemsIn, read, SMALLEST } from '../design-text.js';
import slips from './design-slips.json' with { type: 'json' };

const demo = exampleText('demo');

describe('one slip in the demo gives one problem, with its key and place', () => {
  // Each row: what is changed in the demo, the key named, the code, patterns of message and expectation, and the
  // text that the line and column point at.
  it.each(slips)('$from → $to', async ({ from, to, key, code, says, expected, at }) => {
    const text = changed(demo, from, to);
    const problems = await problemsIn(text);
    expect(problems.map(keyOf)).toEqual([key]);
    const [problem] = problems;
    expect(problem?.code).toBe(code);
    expect(problem?.message).toMatch(new RegExp(says));
    expect(problem?.expected ?? '').toMatch(new RegExp(expected));
    expect({ line: problem?.line, column: problem?.column }).toEqual(placeIn(text, at));
  });
});

describe('every problem at once', () => {
  it('in the order of the file', async () => {
    const text = SMALLEST.replace('length: 690', 'lenght: 690')
      .replace('crankcase_top: 140', 'crankcase_top: -1')
      .replace('7.2 L', '7.2 qt')
      .replace('width_inside: 190', 'width_inside: 1,5')
      .replace('[140, 0]', '[140]');
    const problems = await problemsIn(text);
    expect(problems.map(keyOf)).toEqual([
      'engine.rail.lenght',
      'engine.crankcase_top',
      'oil.fill',
      'pan.width_inside',
      'pickup.at',
    ]);
    expect(problems.map(({ line }) => line)).toEqual([5, 6, 7, 10, 11]);
  });

  it('keys that must be there, each at the thing it is missing from', async () => {
    const problems = await problemsIn('format: 1\nengine:\n  rail: {width: 3}\n');
    expect(problems.map((p) => `${keyOf(p)} ${p.line}:${p.column}`).sort()).toEqual(
      [
        'title 1:1',
        'units 1:1',
        'engine.rail.length 3:9',
        'engine.crankcase_top 3:3',
        'oil 1:1',
        'pan 1:1',
        'pickup 1:1',
      ].sort(),
    );
  });
});

describe('what is not known', () => {
  it('is null and listed, never made up', async () => {
    const { design, unknown } = await read(SMALLEST);
    expect(design.engine.crank).toBeNull();
    expect(design.engine.tilt).toBeNull();
    expect(design.oil.pump).toBeNull();
    expect(design.chassis.axes).toBeNull();
    expect(unknown.map(({ path }) => path.join('.')).sort()).toEqual([
      'engine.crank',
      'engine.tilt',
      'oil.pump',
    ]);
  });

  it('may be said with the word unknown', async () => {
    const text = demo
      .replace(
        /crank: \{.*\}/,
        'crank: {centre_above_rail: 62, stroke: unknown, big_end_reach: 41, throws: unknown}',
      )
      .replace('lean_left: 0 deg', 'lean_left: unknown')
      .replace('pump: 45 L/min', 'pump: unknown')
      .replace('axes: car ', 'axes: unknown ')
      .replace('ground: -283', 'ground: unknown');
    const { design, unknown } = await read(text);
    expect(design.engine.crank).toBeNull();
    expect(design.chassis.ground).toBeNull();
    expect(unknown.map(({ path }) => path.join('.')).sort()).toEqual(
      [
        'chassis.axes',
        'chassis.ground',
        'engine.crank.stroke',
        'engine.crank.throws',
        'engine.tilt.lean_left',
        'oil.pump',
      ].sort(),
    );
  });

  it('throws alone leave the sweep known', async () => {
    const { design, unknown } = await read(
      changed(demo, 'throws: [70, 172, 274, 376, 478, 580]', 'throws: unknown'),
    );
    expect(design.engine.crank?.stroke).toBe(96);
    expect(design.engine.crank?.throws).toBeNull();
    expect(unknown.map(({ path }) => path.join('.'))).toEqual(['engine.crank.throws']);
  });
});

describe('a file in inches', () => {
  const inches = changed(SMALLEST, 'units: mm', 'units: in');
  it('takes bare lengths as inches and wants a unit on oil', async () => {
    const problems = await problemsIn(inches.replaceAll(/(\d+)(?=[,\]}])/g, '1').replace('7.2 L', '7.2'));
    expect(problems.map(keyOf)).toContain('oil.fill');
    expect(problems.find((p) => keyOf(p) === 'oil.fill')?.advice).toBe('Add the unit: 6 L or 6 US qt.');
  });
});

describe('plain data instead of a file', () => {
  it('is read the same way, without lines', () => {
    expect(() => readDesign({ format: 1 })).toThrow(/title is missing/);
    expect(() => readDesign(null)).toThrow(/not a group of keys|is empty/);
    expect(() => readDesign([])).toThrow(/not a group of keys/);
    expect(() => readDesign('format: 1')).toThrow(/not a group of keys/);
  });
});
