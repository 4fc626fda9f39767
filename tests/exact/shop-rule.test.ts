import { lineEntity, pathEntity, textEntity } from 'pan-core/drawing/dxf/dxf-entity.js';
import { dxfFile } from 'pan-core/drawing/dxf/dxf-file.js';
import { type DrawnFile, type ShopRuleId, shopRules } from 'pan-core/drawing/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { circlePath, type Path, polylinePath, type Segment } from 'pan-core/geometry/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';

const square = (x: number, y: number, side: number): Path =>
  polylinePath(
    [
      [x, y],
      [x + side, y],
      [x + side, y + side],
      [x, y + side],
    ],
    true,
  );

/** A plate of 100 with a hole of 10, its middle 15 from the left edge: 10 mm of metal between. */
const good: readonly Segment[] = [...square(0, 0, 100), ...circlePath([15, 50], 5)];

const fileOf = (pieces: readonly Segment[], more: Partial<DrawnFile> = {}): DrawnFile => ({
  unit: 1,
  pieces: pieces.map((piece) => ({ layer: 'cut', piece })),
  texts: [],
  curves: [],
  ...more,
});

const asked = (file: DrawnFile, thickness: number | null = 3) => {
  const rules = shopRules(file, { isCut: (layer) => layer === 'cut', thickness });
  return (id: ShopRuleId) => rules.find((rule) => rule.id === id)!;
};

const broken = (file: DrawnFile, thickness: number | null = 3): readonly string[] =>
  shopRules(file, { isCut: (layer) => layer === 'cut', thickness })
    .filter((rule) => rule.status !== 'pass')
    .map((rule) => `${rule.id} ${rule.status} ${rule.value}`);

describe('the shop’s rules', () => {
  it('pass a plate with a hole, and measure both', () => {
    const of = asked(fileOf(good));
    expect(broken(fileOf(good))).toEqual([]);
    expect(of('closed').value).toBe(2);
    expectWithin(of('hole').value, 10, 1e-9, 'hole, mm');
    expectWithin(of('gap').value, 10, 1e-9, 'gap, mm');
  });

  it('take loops whose pieces come in any order and direction', () => {
    const shuffled = [...good]
      .reverse()
      .map((s, i) => (i % 2 === 0 && s.kind === 'line' ? { ...s, from: s.to, to: s.from } : s));
    expect(broken(fileOf(shuffled))).toEqual([]);
  });

  const line = (from: readonly [number, number], to: readonly [number, number]): Segment => ({
    kind: 'line',
    from,
    to,
  });
  it.each<[string, DrawnFile, readonly string[]]>([
    ['no units', fileOf(good, { unit: null }), ['units fail null']],
    ['inches', fileOf(good, { unit: 25.4 }), ['units warn 25.4']],
    ['nothing to cut', fileOf([]), ['closed fail 0']],
    [
      'an open outline: two ends 0.02 mm apart',
      fileOf([...square(0, 0, 100).slice(0, 3), line([0, 100], [0, 0.02])]),
      ['closed fail 0', 'stray fail 2'],
    ],
    [
      'ends 0.005 mm apart, which meet',
      fileOf([...square(0, 0, 100).slice(0, 3), line([0, 100], [0, 0.005])]),
      [],
    ],
    ['a loose line outside', fileOf([...good, line([200, 0], [300, 0])]), ['stray fail 2']],
    [
      'a line drawn twice, once the other way',
      fileOf([...good, line([100, 0], [0, 0])]),
      ['duplicate fail 1'],
    ],
    ['a hole drawn twice', fileOf([...good, ...circlePath([15, 50], 5)]), ['duplicate fail 2']],
    [
      'a hole across the edge',
      fileOf([...square(0, 0, 100), ...circlePath([0, 50], 5)]),
      ['crossing fail 2', 'gap warn 0'],
    ],
    [
      'two edges on one line that share a stretch, which two more pieces end on',
      fileOf([...square(0, 0, 100), ...square(100, 20, 50)]),
      ['crossing fail 3', 'gap warn 0'],
    ],
    ['words among the cuts', fileOf(good, { texts: ['cut', 'note'] }), ['text fail 1']],
    ['splines among the cuts', fileOf(good, { curves: ['cut', 'cut', 'note'] }), ['spline fail 2']],
  ])('say what is wrong: %s', (_, file, expected) => expect(broken(file)).toEqual(expected));

  it('weigh holes and gaps against the sheet', () => {
    expect(broken(fileOf(good), 12)).toEqual(['hole warn 10']);
    expect(broken(fileOf(good), 20.1)).toEqual(['hole warn 10', 'gap warn 10']);
    expect(broken(fileOf(good), null)).toEqual(['hole unknown 10', 'gap unknown 10']);
  });

  it('leave lines on other layers alone', () => {
    const file = fileOf(good);
    const fold = { layer: 'fold', piece: line([0, 30], [100, 30]) };
    expect(broken({ ...file, pieces: [...file.pieces, fold] })).toEqual([]);
  });

  it('keep a drawing that breaks them from being written', () => {
    const outline = pathEntity('through', square(0, 0, 100), true);
    const box = { min: [0, 0], max: [100, 100] } as const;
    expect(() => dxfFile([outline], box)).not.toThrow();
    for (const bad of [
      pathEntity('through', square(50, 50, 100), true),
      lineEntity('through', [0, 200], [50, 200]),
      textEntity('through', [10, 10], 5, 'word'),
      outline,
    ])
      expect(() => dxfFile([outline, bad], box)).toThrow(PanError);
  });
});
