import { sloshFrequency, stepOvershoot } from 'pan-core/oil/index.js';
import { expect, test } from 'vitest';
import { expectPublished, row, rowsUnder, title } from './rows.js';

const input = (id: string, name: string): number => {
  const value = row(id).inputs[name];
  if (typeof value !== 'number') throw new Error(`${id} has no input ${name}`);
  return value;
};

const frequency = (id: string): number =>
  sloshFrequency(
    1000 * input(id, 'length_m'),
    1000 * input(id, 'depth_m'),
    1000 * input(id, 'gravity_m_s2'),
    input(id, 'mode'),
  );

const modes = [...rowsUnder('slosh.tank-0.8'), ...rowsUnder('slosh.tank-0.3'), row('slosh.theory')];

test.each(modes.map(({ id }) => [title(id), id]))('%s', (_, id) => expectPublished(id, frequency(id)));

test(title('slosh.step-overshoot'), () => {
  const id = 'slosh.step-overshoot';
  expectPublished(id, stepOvershoot(input(id, 'damping')));
});

test('a deep tank forgets its depth and a shallow one its length: √(gπ/L)/2π and √(gh)/2L', () => {
  expect(sloshFrequency(300, 3000, 9810) / (Math.sqrt((9810 * Math.PI) / 300) / (2 * Math.PI))).toBeCloseTo(
    1,
    12,
  );
  expect(sloshFrequency(3000, 3, 9810) / (Math.sqrt(9810 * 3) / 6000)).toBeCloseTo(1, 5);
});
