import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { changed, exampleText, problemsIn, read } from '../design-text.js';
import { buildPan, example, inFolder, runPan } from './pan-command.js';

beforeAll(buildPan);

const text = exampleText('windage-tray');
const at = (i: number, ...more: readonly (string | number)[]) => ['baffles', i, ...more];

describe('what a tray or lid cannot be', () => {
  it.each([
    ['tray_down: 40', 'tray_down: 40\n    lid_down: 40', at(0)],
    ['opens: right', 'opens: rear', at(0, 'louvres', 'opens')],
    ['bend: 30 deg', 'bend: 80 deg', at(0, 'louvres', 'bend')],
    ['size: [66, 14]', 'size: [14, 66]', at(0, 'louvres', 'size')],
    ['rows: 4', 'rows: 0', at(0, 'louvres', 'rows')],
    ['along: rear', 'along: top', at(0, 'slots', 0, 'along')],
    ['inset: 5', 'inset: 0', at(0, 'slots', 0, 'inset')],
    ['studs: {size: M8', 'fixed: welded\n    studs: {size: M8', at(0, 'studs')],
    ['tabs: {each_side: 3, size: M6}', 'studs: {size: M6, at: [[150, 0]]}', at(1, 'studs')],
    ['tabs: {each_side: 3, size: M6}', 'tabs: {each_side: 3, size: 6}', at(1, 'tabs', 'size')],
    ['across_at: 110', 'across_at: 110\n    slots: [{along: rear, count: 1, size: [20, 6]}]', at(2, 'slots')],
  ])('%s as %s is refused at its place', async (from, to, path) => {
    const problems = await problemsIn(changed(text, from, to));
    expect(problems[0]?.path).toEqual(path);
    expect(problems[0]?.message).toBeTruthy();
  });

  it('what is left out is taken as usual and told', async () => {
    const short = changed(changed(text, 'bend: 30 deg, opens: right', ''), ', inset: 5', '');
    const { assumed, design } = await read(changed(short, '{each_side: 3, size: M6}', '{each_side: 3}'));
    expect(assumed.map(({ path }) => path.join('.'))).toEqual(
      expect.arrayContaining([
        'baffles.0.louvres.bend',
        'baffles.0.louvres.opens',
        'baffles.0.slots.0.inset',
        'baffles.1.tabs.size',
      ]),
    );
    const [tray, lid] = design.baffles;
    expect(tray).toMatchObject({ fixed: 'bolted', tray: true, louvres: { opens: 'right' } });
    expect(lid).toMatchObject({ fixed: 'bolted', tabs: { eachSide: 3, size: 6 } });
  });
});

it('the example with a tray is ready, and tray, lid and tab pass the shop’s rules', () => {
  inFolder((folder) => {
    const set = join(folder, 'set');
    expect(runPan(['cut', example('windage-tray'), '--out', set]).code).toBe(0);
    for (const name of ['windage-tray', 'lid', 'lid-tab']) {
      const file = join(set, '2-laser', 'bare', `${name}.dxf`);
      const ran = runPan(['inspect', file, '--thickness', '2 mm', '--json']);
      for (const rule of JSON.parse(ran.out).rules) expect(rule.status, `${name} ${rule.id}`).toBe('pass');
    }
    const bought = readFileSync(join(set, '5-buy', 'bought.txt'), 'utf8');
    expect(bought).toContain('6 bolts M6 with weld nuts');
    expect(bought).toContain('6 studs M8');
  });
});
