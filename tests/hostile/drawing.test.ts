import { csvDrawing } from 'pan-cli/read/drawing/csv-drawing.js';
import { parseDxf } from 'pan-cli/read/drawing/dxf-parse.js';
import { drawingOf } from 'pan-cli/read/drawing/read-drawing.js';
import { PanError } from 'pan-core';
import { describe, expect, it } from 'vitest';

const dxf = (...pairs: readonly (readonly [number, string | number])[]): string =>
  `${pairs.map(([code, value]) => `${code}\n${value}`).join('\n')}\n`;

type Pair = readonly [number, string | number];
const section = (name: string, ...pairs: readonly Pair[]): readonly Pair[] => [
  [0, 'SECTION'],
  [2, name],
  ...pairs,
  [0, 'ENDSEC'],
];
const EOF: Pair = [0, 'EOF'];
const line = (x: string | number = 0): readonly Pair[] => [
  [0, 'LINE'],
  [8, '0'],
  [10, x],
  [20, 0],
  [11, 10],
  [21, 0],
];
const block = (name: string, ...inside: readonly Pair[]): readonly Pair[] => [
  [0, 'BLOCK'],
  [8, '0'],
  [2, name],
  [10, 0],
  [20, 0],
  ...inside,
  [0, 'ENDBLK'],
];
const insert = (name: string, ...more: readonly Pair[]): readonly Pair[] => [
  [0, 'INSERT'],
  [8, '0'],
  [2, name],
  [10, 0],
  [20, 0],
  ...more,
];

const faultOf = async (text: string, name = 'rail.dxf'): Promise<string> => {
  try {
    await drawingOf(name, text);
  } catch (error) {
    if (error instanceof PanError)
      return error.problems.map((p) => `${p.code} ${p.message} ${p.advice}`).join('\n');
    throw error;
  }
  throw new Error('it was read');
};

describe('a DXF that cannot be trusted', () => {
  const whole = (...pairs: readonly Pair[]): string => dxf(...section('ENTITIES', ...pairs), EOF);

  it.each<[string, string, RegExp]>([
    ['nothing', '', /ends before its EOF/],
    ['no end', dxf(...section('ENTITIES', ...line())), /ends before its EOF/],
    ['no ENDSEC', dxf([0, 'SECTION'], [2, 'ENTITIES'], ...line(), EOF), /ENTITIES does not end/],
    ['a comma', whole(...line('1,5')), /line 10: "1,5" has a decimal comma/],
    ['NaN', whole(...line('nan')), /line 10: "nan" is no number/],
    ['too large', whole(...line('1e300')), /line 10: "1e300" is no number/],
    ['a word for a code', 'AC1032\nwhatever\n', /line 1: "AC1032" is no DXF group code/],
    ['binary', '0\nSECTION\0\n', /binary/],
    [
      'a release to come',
      dxf(...section('HEADER', [9, '$ACADVER'], [1, 'AC9999']), ...section('ENTITIES', ...line()), EOF),
      /version, AC9999/,
    ],
    [
      'a lying count',
      whole([0, 'LWPOLYLINE'], [8, '0'], [90, 7], [70, 1], [10, 0], [20, 0]),
      /says it has 7 corners and has 1/,
    ],
    ['half a line', whole([0, 'LINE'], [8, '0'], [10, 0], [20, 0]), /LINE lacks its group 11/],
    [
      'nothing drawn',
      whole([0, 'TEXT'], [8, '0'], [10, 0], [20, 0], [1, 'hello']),
      /Nothing that makes an outline/,
    ],
    [
      'a block in itself',
      dxf(...section('BLOCKS', ...block('A', ...insert('A'))), ...section('ENTITIES', ...insert('A')), EOF),
      /block A contains itself/,
    ],
    [
      'two blocks in each other',
      dxf(
        ...section('BLOCKS', ...block('A', ...insert('B')), ...block('B', ...insert('A'))),
        ...section('ENTITIES', ...insert('A')),
        EOF,
      ),
      /block A contains itself/,
    ],
    [
      'a block a milliard times',
      dxf(
        ...section('BLOCKS', ...block('A', ...line())),
        ...section('ENTITIES', ...insert('A', [70, 30000], [71, 30000])),
        EOF,
      ),
      /more than 20000/,
    ],
  ])('%s', async (_, text, says) => {
    expect(await faultOf(text)).toMatch(says);
  });

  it('blocks that double fifteen times over are stopped in time', async () => {
    const blocks = Array.from({ length: 16 }, (_, i) =>
      block(`B${i}`, ...(i === 15 ? line() : [...insert(`B${i + 1}`), ...insert(`B${i + 1}`)])),
    ).flat();
    const start = performance.now();
    expect(
      await faultOf(dxf(...section('BLOCKS', ...blocks), ...section('ENTITIES', ...insert('B0')), EOF)),
    ).toMatch(/more than 20000/);
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it('a parser that never ends is ended, and such a file does not reach it', async () => {
    // Handed over without the screen, this polyline without its SEQEND holds the parser for ever.
    const text = dxf(...section('ENTITIES', [0, 'POLYLINE'], [8, '0'], [70, 1], [0, 'LINE'], [8, '0']), EOF);
    await expect(parseDxf({ text, entities: 1 }, 500)).rejects.toThrow(/more than 0\.5 s/);
    // The screen sees it.
    expect(await faultOf(text)).toMatch(/LINE stands where a polyline’s corner or its end should/);
  });

  it('a drawing of five thousand lines to one point is read', async () => {
    const star = Array.from({ length: 5000 }, (_, i) => line(i / 7)).flat();
    const drawing = await drawingOf('rail.dxf', whole(...star));
    expect(drawing.curves).toHaveLength(5000);
  });
});

describe('a table of points that cannot be trusted', () => {
  it.each<[string, RegExp]>([
    ['', /empty/],
    ['a,b\n1,2\n', /line 1: It has no columns x and y/],
    ['x,y\n0,0\n1,0\n', /2 points/],
    ['x,y\n0,0\n1,0\n1,abc\n', /line 4: "abc" is no number/],
    ['x,y\n0,0\n1,0\n1\n', /line 4: "" is no number/],
    ['x,y\n0,0\n1,0\n1,NaN\n', /line 4: "NaN"/],
  ])('%j', async (text, says) => {
    expect(await faultOf(text, 'rail.csv')).toMatch(says);
  });

  it('separators, decimal commas and units are read as they are meant', () => {
    const { unit, curves } = csvDrawing('# traced\nx (in);y (in)\n0;0\n27,5;0\n27,5;9,75\n0;9,75\n');
    expect(unit).toBe(25.4);
    expect(curves[0]?.curve).toMatchObject({
      kind: 'straight',
      points: [
        [0, 0],
        [27.5, 0],
        [27.5, 9.75],
        [0, 9.75],
        [0, 0],
      ],
    });
    const holes = csvDrawing('x_mm,y_mm,diameter_mm\n15,112,6.8\n75,112,6.8\n');
    expect(holes.unit).toBe(1);
    expect(holes.curves[1]?.curve).toMatchObject({ kind: 'ellipse', at: [75, 112], u: [3.4, 0] });
  });

  it('another kind of file is told apart', async () => {
    expect(await faultOf('', 'rail.dwg')).toMatch(/neither \.dxf nor \.csv/);
  });
});
