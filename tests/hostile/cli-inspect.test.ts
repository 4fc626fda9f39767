import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildPan, example, inFolder, type Ran, runPan, STACK } from './pan-command.js';

beforeAll(buildPan);

type Pair = readonly [code: number, value: string | number];

const dxf = (
  entities: readonly Pair[],
  header: readonly Pair[] = [
    [9, '$INSUNITS'],
    [70, 4],
  ],
): string =>
  [
    [0, 'SECTION'],
    [2, 'HEADER'],
    ...header,
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...entities,
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ]
    .map(([code, value]) => `${code}\n${value}\n`)
    .join('');

const line = (x0: number, y0: number, x1: number, y1: number, layer = 'CUT'): readonly Pair[] => [
  [0, 'LINE'],
  [8, layer],
  [10, x0],
  [20, y0],
  [11, x1],
  [21, y1],
];
const circle = (x: number, y: number, r: number): readonly Pair[] => [
  [0, 'CIRCLE'],
  [8, 'CUT'],
  [10, x],
  [20, y],
  [40, r],
];
const square: readonly Pair[] = [
  ...line(0, 0, 100, 0),
  ...line(100, 0, 100, 100),
  ...line(100, 100, 0, 100),
  ...line(0, 100, 0, 0),
];

/** A closed Bézier loop of two spans about (50, 50). */
const spline: readonly Pair[] = [
  [0, 'SPLINE'],
  [8, 'CUT'],
  [70, 0],
  [71, 3],
  ...[0, 0, 0, 0, 1, 1, 1, 2, 2, 2, 2].map((knot): Pair => [40, knot]),
  ...[40, 40, 60, 60, 60, 40, 40].flatMap((x, i): readonly Pair[] => [
    [10, x],
    [20, [50, 60, 60, 50, 40, 40, 50][i] as number],
  ]),
];

const inspected = (text: string, ...more: readonly string[]): Ran =>
  inFolder((folder) => {
    const file = join(folder, 'part.dxf');
    writeFileSync(file, text);
    return runPan(['inspect', file, ...more]);
  });

/** Rules that are not passed, with their status. */
const told = (text: string, ...more: readonly string[]): readonly string[] =>
  JSON.parse(inspected(text, '--json', ...more).out)
    .rules.filter((rule: { status: string }) => rule.status !== 'pass')
    .map((rule: { id: string; status: string }) => `${rule.id} ${rule.status}`);

describe('pan inspect', () => {
  it('passes a clean plate with a hole, and ends with 0', () => {
    const ran = inspected(dxf([...square, ...circle(50, 50, 6)]), '--thickness', '3 mm');
    expect([ran.code, ran.err]).toEqual([0, '']);
    expect(ran.out).toContain('FIT TO CUT FROM');
    expect(ran.out).toContain('12.0 mm');
    expect(ran.out).toContain('44.0 mm');
  });

  it.each<[string, string, readonly string[]]>([
    ['an open outline', dxf(square.slice(0, 18)), ['closed fail', 'stray fail']],
    ['a line twice', dxf([...square, ...line(0, 0, 100, 0)]), ['duplicate fail']],
    ['a hole over the edge', dxf([...square, ...circle(100, 50, 6)]), ['crossing fail', 'gap warn']],
    ['a small hole', dxf([...square, ...circle(50, 50, 1)]), ['hole warn']],
    ['no units', dxf(square, []), ['units fail']],
    [
      'words',
      dxf([...square, [0, 'TEXT'], [8, 'CUT'], [10, 5], [20, 5], [40, 3], [1, 'part']]),
      ['text fail'],
    ],
    [
      'words on a layer of their own, in a file that is cut whole',
      dxf([...square, [0, 'MTEXT'], [8, 'NOTE'], [10, 5], [20, 5], [40, 3], [1, 'part']]),
      ['text warn'],
    ],
    ['splines', dxf([...square, ...spline]), ['spline fail']],
    ['a gap that burns away', dxf([...square, ...circle(90, 50, 9)]), ['gap warn']],
    ['ends that meet nothing', dxf([...square, ...line(200, 0, 300, 0)]), ['stray fail']],
    [
      'an ellipse',
      dxf([
        ...square,
        [0, 'ELLIPSE'],
        [8, 'CUT'],
        [10, 50],
        [20, 50],
        [11, 9],
        [21, 0],
        [40, 0.5],
        [41, 0],
        [42, 6.283185307],
      ]),
      ['spline fail'],
    ],
  ])('says what is wrong with %s', (_, text, expected) => {
    expect(told(text, '--thickness', '3 mm')).toEqual(expected);
    expect(inspected(text, '--thickness', '3 mm').code).toBe(
      expected.some((one) => one.endsWith('fail')) ? 1 : 0,
    );
  });

  it('looks at one layer when told', () => {
    const text = dxf([...square, ...line(0, 50, 100, 50, 'FOLD')]);
    expect(told(text)).toContain('stray fail');
    expect(told(text, '--layer', 'CUT')).toEqual([]);
    const note: readonly Pair[] = [
      [0, 'TEXT'],
      [8, 'FOLD'],
      [10, 5],
      [20, 5],
      [40, 3],
      [1, 'up'],
    ];
    expect(told(dxf([...square, ...line(0, 50, 100, 50, 'FOLD'), ...note]), '--layer', 'CUT')).toEqual([]);
    const wrong = inspected(text, '--layer', 'CUTS');
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('CUT, FOLD');
  });

  it('finds nothing wrong with what pan cut writes', () => {
    inFolder((folder) => {
      const set = join(folder, 'set');
      expect(runPan(['cut', example('two-wings'), '--out', set]).code).toBe(0);
      for (const file of [
        'belly.dxf',
        'bare/side-left.dxf',
        'nests/bare/aluminium-5052-h32-3-mm-sheet-1.dxf',
      ]) {
        const ran = runPan(['inspect', join(set, '2-laser', file), '--thickness', '3 mm', '--json']);
        expect(ran.code, file).toBe(0);
        for (const rule of JSON.parse(ran.out).rules) expect(rule.status, `${file} ${rule.id}`).toBe('pass');
      }
    });
  });

  it.each([
    ['nothing', ''],
    ['no drawing', 'format: 1\n'],
    ['half a file', dxf(square).slice(0, 60)],
    ['numbers that are none', dxf([...line(0, 0, 100, 0)]).replace('100', '1,5')],
  ])('refuses %s with 2 and no stack', (_, text) => {
    const ran = inspected(text);
    expect(ran.code).toBe(2);
    expect(ran.out).toBe('');
    expect(ran.err).not.toMatch(STACK);
  });

  it('refuses a thickness that is no length', () => {
    const ran = inspected(dxf(square), '--thickness', 'thin');
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('--thickness');
  });
});
