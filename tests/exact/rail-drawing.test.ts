import { type Drawing, PanError, readDesign } from 'pan-core';
import { bulgeCurve, type Curve, circleCurve } from 'pan-core/geometry/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';

type Point = readonly [number, number];

/** An invented rail 600 × 220 with corners of R 30, drawn with its rear left corner at [dx, dy], in mm. */
const rounded = (dx: number, dy: number, gap = 0): readonly Curve[] => {
  const [l, w, r] = [600, 220, 30];
  const at = (x: number, y: number): Point => [x + dx, y + dy];
  const line = (a: Point, b: Point): Curve => ({ kind: 'straight', points: [a, b] });
  const quarter = Math.tan(Math.PI / 8);
  return [
    line(at(r, 0), at(l - r - gap, 0)),
    bulgeCurve(at(l - r, 0), at(l, r), quarter),
    line(at(l, r), at(l, w - r)),
    bulgeCurve(at(l, w - r), at(l - r, w), quarter),
    line(at(r, w), at(l - r, w)),
    bulgeCurve(at(r, w), at(0, w - r), quarter),
    line(at(0, r), at(0, w - r)),
    bulgeCurve(at(0, r), at(r, 0), quarter),
  ];
};

const drawing = (curves: readonly Curve[], unit: number | null = 1, layer = 'RAIL'): Drawing => ({
  unit,
  curves: curves.map((curve) => ({ curve, layer })),
  passedOver: [],
  words: [],
});

const design = (rail: object, holes: object | undefined = undefined, units = 'mm'): object => ({
  format: 1,
  title: 'Drawn',
  units,
  engine: { rail, ...(holes === undefined ? {} : { rail_holes: holes }), crankcase_top: '140 mm' },
  oil: { fill: '7 L' },
  pan: {
    floor_inside: [
      ['560 mm', '40 mm'],
      ['300 mm', '58 mm'],
      ['300 mm', '165 mm'],
      ['40 mm', '172 mm'],
    ],
    width_inside: '160 mm',
  },
  pickup: { at: ['140 mm', 0] },
});

const railOf = (rail: object, file: Drawing, holes?: object, units?: string) =>
  readDesign(design(rail, holes, units), [], { 'rail.dxf': file });

const box = (points: readonly Point[]): readonly number[] => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
};

const area = (loop: readonly Point[]): number =>
  loop.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length] as Point;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

const problemsOf = (act: () => unknown): string => {
  try {
    act();
  } catch (error) {
    if (error instanceof PanError)
      return error.problems.map((p) => `${p.message} ${p.advice ?? ''}`).join('\n');
    throw error;
  }
  throw new Error('no problem was found');
};

// A rounded rectangle: the corners take (4 − π)·r² off.
const AREA = 600 * 220 - (4 - Math.PI) * 900;

describe('an outline from a drawing', () => {
  it('is laid on the engine by origin and forward, whichever way it was drawn', () => {
    const { design: made } = railOf(
      { outline: 'rail.dxf', origin: [40, 130], seen_from: 'above' },
      drawing(rounded(40, 20)),
    );
    const { outline } = made.engine.rail;
    box(outline).forEach((value, i) => {
      expectWithin(value, [0, -110, 600, 110][i] as number, 1e-9);
    });
    // Chords and left-out corners stay within 0.05 mm, along four quarter turns of R 30.
    expectWithin(area(outline), AREA, 0.05 * 2 * Math.PI * 30);
    // The same drawn with the front down the page, from a point on the centre line.
    const turned = drawing(
      rounded(40, 20).map((curve) =>
        curve.kind === 'straight'
          ? { ...curve, points: curve.points.map(([x, y]): Point => [y, -x]) }
          : curve.kind === 'ellipse'
            ? {
                ...curve,
                at: [curve.at[1], -curve.at[0]],
                u: [curve.u[1], -curve.u[0]],
                v: [curve.v[1], -curve.v[0]],
              }
            : curve,
      ),
    );
    for (const forward of ['down', [130, -400]] as const) {
      const again = railOf({ outline: 'rail.dxf', origin: [130, -40], forward, seen_from: 'above' }, turned);
      const points = again.design.engine.rail.outline;
      box(points).forEach((value, i) => {
        expectWithin(value, [0, -110, 600, 110][i] as number, 1e-6);
      });
      expectWithin(area(points), AREA, 10);
    }
  });

  it('a known distance along both axes corrects a scanner', () => {
    const stretched = rounded(0, -110).map((curve): Curve => {
      const by = ([x, y]: Point): Point => [x * 1.02, y * 0.97];
      if (curve.kind === 'straight') return { ...curve, points: curve.points.map(by) };
      if (curve.kind === 'ellipse') return { ...curve, at: by(curve.at), u: by(curve.u), v: by(curve.v) };
      return curve;
    });
    const hole = circleCurve([100 * 1.02, 60 * 0.97], 4);
    const { design: made } = railOf(
      {
        outline: 'rail.dxf',
        seen_from: 'above',
        calibrate: { x: [612, 600], y: [97, 100] },
      },
      drawing([...stretched, { ...hole, u: [4.08, 0], v: [0, 3.88] }]),
      { drawing: 'rail.dxf', size: 'M8' },
    );
    box(made.engine.rail.outline).forEach((value, i) => {
      expectWithin(value, [0, -110, 600, 110][i] as number, 1e-9);
    });
    expectWithin(made.engine.railHoles[0]?.at[0], 100, 1e-9);
    expectWithin(made.engine.railHoles[0]?.at[1], 60, 1e-9);
  });

  it('a drawing without a unit takes the file’s, and says so', () => {
    const inches = rounded(0, -110).map((curve): Curve => {
      const by = ([x, y]: Point): Point => [x / 25.4, y / 25.4];
      if (curve.kind === 'straight') return { ...curve, points: curve.points.map(by) };
      if (curve.kind === 'ellipse') return { ...curve, at: by(curve.at), u: by(curve.u), v: by(curve.v) };
      return curve;
    });
    const read = railOf({ outline: 'rail.dxf', seen_from: 'above' }, drawing(inches, null), undefined, 'in');
    expectWithin(box(read.design.engine.rail.outline)[2], 600, 1e-9);
    expect(read.assumed.find(({ path }) => path.at(-1) === 'drawn_in')?.value).toBe('in');
    // In a file in mm it would be 24 mm long, which no rail is.
    expect(problemsOf(() => railOf({ outline: 'rail.dxf' }, drawing(inches, null)))).toMatch(
      /23\.62 mm long.*drawn_in/,
    );
    const told = railOf({ outline: 'rail.dxf', drawn_in: 'in' }, drawing(inches, null));
    expectWithin(box(told.design.engine.rail.outline)[2], 600, 1e-9);
  });

  it('gaps are closed within what is stated and told, wider ones refused with what to do', () => {
    const file = drawing(rounded(0, -110, 0.4));
    const read = railOf({ outline: 'rail.dxf', close_gaps: '0.5 mm' }, file);
    expect(read.assumed.find(({ path }) => path.at(-1) === 'outline')?.why).toMatch(
      /1 gap was closed, the widest 0\.4 mm at \[569\.8, -110\]/,
    );
    expect(problemsOf(() => railOf({ outline: 'rail.dxf' }, file))).toMatch(
      /no closed outline.*0\.4 mm apart.*close_gaps to 0\.4 mm/,
    );
  });

  it('keys of a drawing are refused without one, and a rail behind the rear face', () => {
    expect(problemsOf(() => readDesign(design({ length: 600, width: 220, drawn_in: 'mm' })))).toMatch(
      /engine\.rail\.drawn_in says how a drawing lies/,
    );
    expect(problemsOf(() => railOf({ outline: 'rail.dxf' }, drawing(rounded(-20, -110))))).toMatch(
      /20 mm behind the rear face.*origin/,
    );
  });
});

describe('holes from a drawing', () => {
  const circles = (...of: readonly (readonly [number, number, number])[]): readonly Curve[] =>
    of.map(([x, y, d]) => circleCurve([x, y], d / 2));

  it('threads follow from the drawn diameter where only one can be meant', () => {
    const file = drawing([
      ...rounded(0, -110),
      ...circles([20, 90, 9], [20, -90, 6.6], [300, 0, 80], [900, 0, 9]),
    ]);
    const read = railOf({ outline: 'rail.dxf', seen_from: 'below' }, file, { drawing: 'rail.dxf' });
    expect(read.design.engine.railHoles).toEqual([
      { at: [20, -90], thread: 8 },
      { at: [20, 90], thread: 6 },
    ]);
    expect(read.assumed.find(({ path }) => path.at(-1) === 'drawing')?.why).toMatch(
      /1 circles? of other sizes.*80 mm.*outside the outline/,
    );
  });

  it('an unclear diameter is asked about, and an answer is taken', () => {
    const file = drawing([...rounded(0, -110), ...circles([20, 90, 10])]);
    expect(problemsOf(() => railOf({ outline: 'rail.dxf' }, file, { drawing: 'rail.dxf' }))).toMatch(
      /holes of 10 mm, which may be M8 or M10.*sizes:/,
    );
    const sizes = [{ drawn: 10, size: 'M10' }];
    const read = railOf({ outline: 'rail.dxf' }, file, { drawing: 'rail.dxf', sizes });
    expect(read.design.engine.railHoles).toEqual([{ at: [20, 90], thread: 10 }]);
  });

  it('a tap drill inside its thread is one hole', () => {
    const file = drawing([...rounded(0, -110), ...circles([20, 90, 6.8], [20, 90, 8])]);
    const read = railOf({ outline: 'rail.dxf' }, file, { drawing: 'rail.dxf' });
    expect(read.design.engine.railHoles).toEqual([{ at: [20, 90], thread: 8 }]);
  });
});

describe('marks tell a rail from its mirror image', () => {
  const marked = (seen: 'above' | 'below', at: Point) =>
    railOf(
      { outline: 'rail.dxf', seen_from: seen, marks: [{ name: 'port', drawn: [500, 70], at }] },
      drawing(rounded(0, -110)),
    ).rail?.marks;

  it('on the side it is on, on the other side, nowhere, and on the centre line', () => {
    expect(marked('above', [502, 68])?.says).toBe('agrees');
    expect(marked('below', [502, 68])?.says).toBe('mirrored');
    expect(marked('above', [400, 68])?.says).toBe('neither');
    expectWithin(marked('below', [502, 68])?.marks[0]?.off, Math.hypot(2, 138), 1e-9);
    expectWithin(marked('below', [502, 68])?.marks[0]?.offTurned, Math.hypot(2, 2), 1e-9);
    const middle = railOf(
      { outline: 'rail.dxf', seen_from: 'above', marks: [{ name: 'dowel', drawn: [500, 3], at: [500, -2] }] },
      drawing(rounded(0, -110)),
    );
    expect(middle.rail?.marks?.says).toBe('cannot tell');
  });
});
