import { csv } from 'pan-core/drawing/csv.js';
import { type CutFile, safeName, safeNames, wrapLine } from 'pan-core/drawing/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { panSeams } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { setOf, textAt } from '../interop/dxf-cut-set.js';
import { expectWithin } from '../numbers.js';
import { sampleDesign, stepDesign } from '../sample-design.js';

const small = stepDesign((d) => {
  d.engine.railHoles = d.engine.railHoles.filter((hole) => Math.abs(hole.at[1]) > 100);
});
const ready = setOf(small, 'pass', 'warn');
const marked = setOf(small, 'fail', 'unknown', 'warn');

describe('seams have the lengths of the shape', () => {
  const lengthOf = (name: string): number =>
    panSeams(buildPan(small))
      .filter((seam) => seam.name === name)
      .reduce((sum, seam) => sum + seam.length, 0);
  // The sharp step: sump 300 × 200 deep, shallow 400 × 50, width 200; strips are counted from the rear.
  it.each([
    ['belly 1 of 5 to side left', 200],
    ['belly 2 of 5 to side left', 300],
    ['belly 3 of 5 to side left', 150],
    ['belly 4 of 5 to side left', 400],
    ['belly 5 of 5 to side left', 50],
    ['belly 2 of 5 to belly 3 of 5', 200],
    ['flange to pan, below', 2 * (700 + 200)],
  ])('%s: %d mm', (name, length) => expectWithin(lengthOf(name), length, 1e-9, name));

  it('a folded belly meets each side along its profile, arcs as chords within 0.05 mm', () => {
    const model = buildPan(sampleDesign());
    const seam = panSeams(model).find((s) => s.name === 'belly to side left');
    const { path } = model.profile;
    const profile = path.reduce(
      (sum, s) =>
        sum +
        (s.kind === 'line'
          ? Math.hypot(s.to[0] - s.from[0], s.to[1] - s.from[1])
          : s.radius * Math.abs(s.sweep)),
      0,
    );
    // A chord is shorter than its arc by no more than 8/3 of the square of its sagitta over its length.
    expectWithin(seam?.length ?? 0, profile, 0.1, 'seam, mm');
    expect(seam?.length ?? 0).toBeLessThan(profile);
  });

  it('a wing meets the side along the cut edge: top, rear and front of its opening', () => {
    const seams = panSeams(buildPan(sampleDesign()));
    const length = (name: string): number => seams.find((s) => s.name === name)?.length ?? 0;
    expectWithin(length('side right to wing strip'), 255, 1e-9, 'top, mm');
    // Floor from 172 at x 32 to 165 at x 320; the wing's top is 95 down all along.
    const depth = (x: number): number => 172 - (7 * (x - 32)) / 288;
    expectWithin(length('side right to wing rear cap'), depth(45) - 95, 1e-9, 'rear, mm');
    expectWithin(length('side right to wing front cap'), depth(300) - 95, 1e-9, 'front, mm');
  });
});

describe('a welded wall', () => {
  it('is stitched where it stands against the sheet: sides and the wing’s top, not over its weep', () => {
    const seam = panSeams(buildPan(sampleDesign())).find((s) => s.name === 'door wall to the pan');
    // At x 240 the floor is 172 − 7·208/288 down and the weep 4; the lid's underside 82, the wing's top 95
    // and the wing 60 wide.
    const foot = 172 - (7 * 208) / 288 - 4;
    expectWithin(seam?.length ?? 0, foot - 82 + (95 - 82) + 60 + (foot - 95), 1e-6, 'contact, mm');
  });
});

describe('seams are named by how the plates lie', () => {
  const jointOf = (name: string): readonly string[] =>
    [...panSeams(buildPan(small)), ...panSeams(buildPan(sampleDesign()))]
      .filter((seam) => seam.name === name)
      .map((seam) => seam.joint);
  it.each([
    ['belly 2 of 5 to side left', 'open corner', 'floor and side, outward'],
    ['belly 3 of 5 to belly 4 of 5', 'fillet', 'step and shallow at the lip, inward'],
    ['belly 2 of 5 to belly 3 of 5', 'open corner', 'sump floor and step, outward'],
    ['belly to wing strip', 'butt', 'the wing’s floor runs on in the belly’s plane'],
    ['side right to wing strip', 'fillet', 'the wing’s top stands on the side'],
    ['wing rear cap to wing strip', 'open corner', 'cap on the strip’s end'],
    ['door wall to the pan', 'tee', 'a wall inside'],
  ])('%s: %s (%s)', (name, joint) => {
    const ways =
      name === 'wing rear cap to wing strip'
        ? [...jointOf(name), ...jointOf('wing strip to wing rear cap')]
        : jointOf(name);
    expect(ways).toEqual([joint]);
  });
});

describe('the set', () => {
  const paths = async (set: Promise<readonly CutFile[]>): Promise<readonly string[]> =>
    (await set).map((f) => f.path);

  it('has every folder’s files, the manifest last', async () => {
    const all = await paths(ready);
    for (const path of [
      '00-read-first.txt',
      '1-mock-up/pan-outside.stl',
      '1-mock-up/pan-inside.stl',
      '1-mock-up/pan-sheet.stl',
      '1-mock-up/print/piece-1.stl',
      '1-mock-up/print/pieces.txt',
      '1-mock-up/plate-flange.stl',
      '1-mock-up/templates.pdf',
      '2-laser/flange.dxf',
      '2-laser/bare/flange.dxf',
      '2-laser/strongback.dxf',
      '2-laser/nests/aluminium-5052-h32-3-mm-sheet-1.dxf',
      '2-laser/nests/bare/aluminium-5052-h32-3-mm-sheet-1.dxf',
      '2-laser/nests/sheets.pdf',
      '2-laser/rules.csv',
      '2-laser/order.txt',
      '3-bench/drawings/flange.pdf',
      '3-bench/folds.txt',
      '3-bench/drill-table.csv',
      '3-bench/pickup-tube.txt',
      '4-weld/order.txt',
      '4-weld/cautions.txt',
      '4-weld/leak-test.txt',
      '5-buy/cut-list.csv',
      '5-buy/bought.txt',
    ]) {
      expect(all).toContain(path);
    }
    expect(all.at(-1)).toBe('manifest.json');
    expect(new Set(all.map((p) => p.toLowerCase())).size).toBe(all.length);
  });

  it('is the same bytes every time', async () => {
    expect(await setOf(small, 'pass', 'warn')).toEqual(await ready);
  });

  it('names what is not ready in every file, and nothing when all is', async () => {
    for (const { path, content } of await marked) {
      const text = typeof content === 'string' ? content : new TextDecoder('latin1').decode(content);
      if (path.endsWith('.csv')) expect(text, path).toMatch(/,no\r\n/);
      expect(text, path).toContain('NOT READY TO CUT');
      if (/\.(txt|dxf|json|csv|pdf)$/.test(path)) expect(text, path).toContain('fail_0, unknown_1');
    }
    for (const { path, content } of await ready) {
      const text = typeof content === 'string' ? content : new TextDecoder('latin1').decode(content);
      expect(text, path).not.toContain('NOT READY');
    }
  });

  it('carries the sentences word for word where they belong', async () => {
    const files = await ready;
    const prove = 'Prove a mock-up on block and car first; check the 100 mm square';
    for (const { path, content } of files) {
      if (typeof content === 'string') expect(content, path).toContain(prove);
    }
    expect(textAt(files, '4-weld/order.txt')).toContain(
      'Never chlorinated cleaner near an arc; clean and vent',
    );
    expect(textAt(files, '4-weld/cautions.txt')).toContain(
      'Never chlorinated cleaner near an arc; clean and vent',
    );
    expect(textAt(files, '4-weld/leak-test.txt')).toContain(
      'Water, or 2–3 psi air, never over 5, regulator and relief, stand aside',
    );
    const first = textAt(files, '00-read-first.txt');
    for (const sentence of [
      'Still-oil geometry, not proof: fit an oil-pressure warning and log it before driving hard',
      'Turn the crank two full turns by hand with clay on floor, lid and tube; wash out every chip',
      'Confirm: pour a measured quantity, wait 15 minutes, mark',
      'Never work under an engine held only by a hoist',
    ]) {
      expect(first).toContain(sentence);
    }
  });

  it('has a manifest by the contract, with the files it names', async () => {
    const files = await ready;
    const manifest = JSON.parse(textAt(files, 'manifest.json'));
    const all = new Set(files.map((f) => f.path));
    expect(manifest.ready).toBe(true);
    for (const part of manifest.parts) {
      expect(all.has(part.file)).toBe(true);
      expect(all.has(part.bare_file)).toBe(true);
      for (const key of ['quantity', 'thickness_mm', 'area_mm2', 'cut_length_mm', 'mass_kg']) {
        expect(part[key], key).toBeGreaterThan(0);
      }
      expect(part.flat_mm).toHaveLength(2);
    }
    expect(manifest.cautions.length).toBeGreaterThan(5);
    for (const path of manifest.files) expect(all.has(path), path).toBe(true);
  });

  it('says the energy in the test air: 16 L at 3 psi hold 1.6 times the 158 J of 10 L', async () => {
    const said = /3 psi \(20\.7 kPa\): (\d+) J stored, (\d+) N/.exec(
      textAt(await ready, '4-weld/leak-test.txt'),
    );
    expectWithin(Number(said?.[1]), 1.6 * 158, 1, 'energy, J');
    // 3 psi on the open top of 700 × 200 mm.
    expectWithin(Number(said?.[2]), 20684.27 * 0.7 * 0.2, 1, 'force, N');
  });

  it('measures holes from the corner of the blank', async () => {
    const rows = textAt(await ready, '3-bench/drill-table.csv')
      .split('\r\n')
      .map((r) => r.split(','));
    const flange = rows.filter((r) => r[0] === 'flange');
    expect(flange).toHaveLength(24);
    // Rail outline from x −25, y −125; the first hole at 15, 114; M8 medium 9 mm (ISO 273).
    expect(flange[0]?.slice(-4)).toEqual(['40', '239', '9', 'yes']);
  });
});

describe('names of files', () => {
  it.each([
    ['Left side', 'left-side'],
    ['../../etc/passwd', 'etc-passwd'],
    ['CON', 'con-part'],
    ['Lpt1', 'lpt1-part'],
    ['Ölwanne №5', 'olwanne-no5'],
    ['油', 'part'],
    ['a\n  0\nLINE', 'a-0-line'],
    ['', 'part'],
    ['x'.repeat(1000), 'x'.repeat(40)],
    ['--', 'part'],
  ])('%j is %s', (words, name) => expect(safeName(words)).toBe(name));

  it('differ where only case, signs or length made them differ', () => {
    const names = safeNames(['Wall', 'wall', 'WALL!', 'wall-2', 'y'.repeat(60), 'y'.repeat(70)]);
    expect(names).toEqual(['wall', 'wall-2', 'wall-3', 'wall-2-2', 'y'.repeat(40), `${'y'.repeat(40)}-2`]);
  });
});

describe('comma-separated text (RFC 4180)', () => {
  it('quotes what needs it and doubles quotes', () => {
    expect(csv([['a', 'b,c', 'd"e', 'f\ng', 1.5, -2]])).toBe('a,"b,c","d""e","f\ng",1.5,-2\r\n');
  });
  it.each(['=1+1', '+1', '-1', '@x', '\t=1'])('keeps %j from being a formula', (words) => {
    expect(csv([[words]])).toBe(`'${words}\r\n`);
  });
});

describe('lines of words', () => {
  it('wrap at spaces and cut what is longer than a line', () => {
    expect(wrapLine('one two three', 7)).toEqual(['one two', 'three']);
    expect(wrapLine('abcdefghij k', 4)).toEqual(['abcd', 'efgh', 'ij k']);
    expect(wrapLine('', 5)).toEqual([]);
  });
});
