import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathBox } from 'pan-core/geometry/index.js';
import type { Part } from 'pan-core/sheet/index.js';
import { afterAll, describe, expect, it, test } from 'vitest';
import { changed, exampleText, read } from '../design-text.js';
import { runPan } from '../hostile/pan-command.js';
import { partsOf } from '../interop/dxf-cut-set.js';
import { expectWithin } from '../numbers.js';

const withJoints = (example: string, joints: string): string => {
  const text = exampleText(example);
  const line = text.split('\n').find((l) => l.startsWith('  joints:'));
  return changed(text, line ?? 'joints', `  joints: ${joints}`);
};
const partsWith = async (example: string, joints: string): Promise<readonly Part[]> =>
  partsOf((await read(withJoints(example, joints))).design);

describe('the line of an end plate', () => {
  it('is on a belly folded with a side as it is on the plain one', async () => {
    const plain = (await partsOf((await read(exampleText('two-piece'))).design)).find(
      (p) => p.name === 'belly',
    )!;
    const parts = await partsWith('two-piece', '{fold: [[front wall, side left]]}');
    const folded = parts.find((p) => p.name.startsWith('belly'))!;
    expect(folded.name).not.toBe('belly');
    const arcs = [plain, folded].map((part) =>
      part.marks.filter((m) => m.what.startsWith('trim to the end plate')).flatMap((m) => m.path),
    );
    expect(arcs.map((one) => one.length)).toEqual([1, 1]);
    const [mine, theirs] = [arcs[1]![0]!, arcs[0]![0]!];
    if (mine.kind !== 'arc' || theirs.kind !== 'arc') throw new Error('no arc');
    expectWithin(mine.radius, theirs.radius, 1e-9, 'radius');
    expectWithin(mine.sweep, theirs.sweep, 1e-9, 'sweep');
    // Its chord lies on the front rail edge, the far end of both blanks.
    for (const [part, arc] of [
      [plain, theirs],
      [folded, mine],
    ] as const)
      for (const p of [arc.from, arc.to]) expectWithin(p[0], pathBox(part.outline).max[0], 1e-9, part.name);
  });
});

test('a line of a baffle over two faces of one plane is drawn once', async () => {
  const parts = await partsWith('demo', '{fold: [[right wing floor, sump floor]]}');
  const belly = parts.find((p) => p.name.startsWith('belly with'))!;
  const drawn = belly.marks.map((m) =>
    JSON.stringify(m.path.map((s) => [s.from, s.to].map((p) => p.map(Math.round)))),
  );
  expect(drawn.filter((one, i) => drawn.indexOf(one) !== i)).toEqual([]);
});

test('a face that came off its strip alone is called by its own name', async () => {
  const names = (await partsWith('demo', '{weld: [[right wing outer wall, right wing top]]}')).map(
    (p) => p.name,
  );
  expect(names).toContain('right wing top');
  expect(names).toContain('right wing strip');
});

/** Folds by which two faces come to lie on one another, and both by name. */
const OVERLAPS: readonly (readonly [string, string, string, readonly string[]])[] = [
  [
    'demo',
    '{fold: [[side left, shallow floor]]}',
    'a side along the shallow floor',
    ['sump floor', 'side left'],
  ],
  ['demo', '{fold: [[side left, step]]}', 'a side along the step', ['side left', 'floor']],
  ['two-wings', '{fold: [[side right, shallow floor]]}', 'the other side', ['sump floor', 'side right']],
];

describe('faces that would want the same sheet are refused by name, and nothing is written', () => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-overlap-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  it.each(OVERLAPS)('%s, %s: %s', (example, joints, _, faces) => {
    const file = join(folder, `${example}.yaml`);
    writeFileSync(file, withJoints(example, joints));
    const out = join(folder, 'out');
    const { code, err } = runPan(['cut', file, '--out', out, '--despite-fails']);
    expect(code).toBe(2);
    expect(err).toMatch(
      /pan\.joints\.fold: Folded this way "[^"]+" and "[^"]+" want the same \d+ mm² of sheet/,
    );
    for (const face of faces) expect(err).toContain(face);
    expect(readdirSync(folder)).toEqual([`${example}.yaml`]);
    rmSync(file);
  });
});
