import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PanError } from 'pan-core/errors/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import { flangeParts, sheetFindings } from 'pan-core/sheet/index.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { changed, exampleText, problemsIn, read } from '../design-text.js';
import { buildPan, example, inFolder, runPan } from './pan-command.js';

beforeAll(buildPan);

const text = exampleText('two-piece');
const seal =
  '{end: front, radius: 75, centre_above_rail: 60, across: 0, land: 12, groove: {width: 4, depth: 4}}';

describe('what a flange cannot be', () => {
  it.each([
    ['across_at: 280', 'across_at: 280, lengthwise_at: 0', ['pan', 'flange', 'split']],
    ['across_at: 280, ', '', ['pan', 'flange', 'split']],
    ['drill_after_weld: dowels', 'drill_after_weld: [[45, 100]]', ['pan', 'flange', 'drill_after_weld', 0]],
    ['drill_after_weld: dowels', 'drill_after_weld: bolts', ['pan', 'flange', 'drill_after_weld']],
    [
      '75, centre_above_rail: 60',
      '75, centre_above_rail: 75',
      ['pan', 'flange', 'end_seals', 0, 'centre_above_rail'],
    ],
    [
      '75, centre_above_rail: 60',
      '75, centre_above_rail: -5',
      ['pan', 'flange', 'end_seals', 0, 'centre_above_rail'],
    ],
    [`- ${seal}`, `- ${seal}\n      - ${seal}`, ['pan', 'flange', 'end_seals', 1, 'end']],
    ['size: 8, fit: close', 'size: 0, fit: close', ['pan', 'flange', 'dowels', 0, 'size']],
    ['groove: {width: 4, depth: 2}', 'groove: {width: 4}', ['pan', 'flange', 'groove', 'depth']],
    ['gasket: sealant', 'gasket: cheese', ['pan', 'flange', 'gasket']],
    ['lighten: {land: 18}', 'lighten: {land: 0}', ['pan', 'flange', 'lighten', 'land']],
  ])('%s as %s is refused at its place', async (from, to, path) => {
    const problems = await problemsIn(changed(text, from, to));
    expect(problems[0]?.path).toEqual(path);
    expect(problems[0]?.message).toBeTruthy();
  });

  it.each([
    ['a joint beyond the flange', 'across_at: 280', 'across_at: 3000'],
    ['a joint through a bolt', 'across_at: 280', 'across_at: 251'],
    ['a round wider than the pan', 'radius: 75', 'radius: 250'],
    ['a groove wider than the land', 'groove: {width: 4, depth: 2}', 'groove: {width: 29, depth: 2}'],

    ['a joint in the end plate', 'across_at: 280', 'across_at: 545'],
  ])('%s is told by a check that fails or a refusal, never a fault of the program', async (_, from, to) => {
    const { design } = await read(changed(text, from, to));
    const profile = floorProfile(design);
    try {
      const found = sheetFindings(design, profile, flangeParts(design, profile));
      expect(found.filter((f) => f.status === 'fail').map((f) => f.id)).not.toEqual([]);
    } catch (error) {
      expect(error).toBeInstanceOf(PanError);
    }
  });
});

it('the example of a flange in two pieces is ready, and its plates pass the shop’s rules', () => {
  inFolder((folder) => {
    const set = join(folder, 'set');
    expect(runPan(['cut', example('two-piece'), '--out', set]).code).toBe(0);
    const { parts } = JSON.parse(readFileSync(join(set, 'manifest.json'), 'utf8'));
    const plates = parts.filter(({ thickness_mm }: { thickness_mm: number }) => thickness_mm === 10);
    expect(plates).toHaveLength(5);
    for (const { bare_file } of [plates[0], plates[3]]) {
      const ran = runPan(['inspect', join(set, bare_file), '--thickness', '8 mm', '--json']);
      expect(ran.code, bare_file).toBe(0);
      for (const rule of JSON.parse(ran.out).rules)
        expect(rule.status, `${bare_file} ${rule.id}`).toBe('pass');
    }
  });
});
