import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { readDesignFile, readDesignText } from 'pan-cli/read/index.js';
import { PanError, type Problem, readDesign } from 'pan-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { changed, exampleText, keyOf, placeIn, problemsIn, SMALLEST } from '../design-text.js';

const demo = exampleText('demo');

const folder = mkdtempSync(join(tmpdir(), 'pan-hostile-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const problemsOf = async (work: () => Promise<unknown>): Promise<readonly Problem[]> => {
  try {
    await work();
  } catch (error) {
    if (error instanceof PanError) return error.problems;
    throw error;
  }
  throw new Error('nothing was refused');
};

describe('files that are no design', () => {
  const path = (name: string): string => join(folder, name);
  beforeAll(() => {
    writeFileSync(path('empty.yaml'), '');
    writeFileSync(path('blank.yaml'), ' \n\n');
    writeFileSync(
      path('binary.yaml'),
      Uint8Array.from({ length: 5000 }, (_, i) => (i * 37) % 256),
    );
    writeFileSync(path('latin.yaml'), Uint8Array.from([0x74, 0x3a, 0x20, 0xe9, 0x0a]));
    writeFileSync(path('large.yaml'), `title: ${'x'.repeat(3_000_000)}\n`);
    writeFileSync(path('locked.yaml'), SMALLEST);
    chmodSync(path('locked.yaml'), 0);
    mkdirSync(path('folder.yaml'));
  });

  it.each([
    ['missing.yaml', /no such file/],
    ['empty.yaml/inside.yaml', /no such file/],
    ['folder.yaml', /a folder/],
    ['empty.yaml', /empty/],
    ['blank.yaml', /empty/],
    ['binary.yaml', /binary/],
    ['latin.yaml', /not UTF-8/],
    ['large.yaml', /larger than 2 MB/],
  ])('%s', async (name, words) => {
    const problems = await problemsOf(() => readDesignFile(path(name)));
    expect(problems).toHaveLength(1);
    expect(problems[0]?.code).toBe('file-read');
    expect(problems[0]?.message).toMatch(words);
    expect(problems[0]?.advice).toBeTruthy();
  });

  it('a file that may not be read (a superuser may read it all the same)', async () => {
    if (process.getuid?.() === 0)
      return expect((await readDesignFile(path('locked.yaml'))).text).toBe(SMALLEST);
    const problems = await problemsOf(() => readDesignFile(path('locked.yaml')));
    expect(problems[0]?.message).toMatch(/may not be read/);
  });

  it('an endless device', async () => {
    const problems = await problemsOf(() => readDesignFile('/dev/zero'));
    expect(problems[0]?.code).toBe('file-read');
  });

  it('one that is in order comes back with its text', async () => {
    writeFileSync(path('good.yaml'), demo);
    const file = await readDesignFile(path('good.yaml'));
    expect(file.text).toBe(demo);
    expect(file.design.pan.floor).toHaveLength(4);
  });

  it('a byte-order mark and Windows line ends are text', async () => {
    writeFileSync(path('windows.yaml'), `\ufeff${demo.replaceAll('\n', '\r\n')}`);
    expect((await readDesignFile(path('windows.yaml'))).design.title).toBe(
      'Quarry-road estate, long straight six',
    );
  });
});

describe('YAML that is refused, with line and column', () => {
  it.each([
    ['a tab as indent', 'units: mm\nengine:\n\trail: {}\n', 3, 1, /tab/i],
    ['a key twice', 'format: 1\ntitle: a\ntitle: b\n', 3, 1, /twice/],
    ['a key twice in brackets', 'oil: {fill: 1 L, fill: 2 L}\n', 1, 18, /twice/],
    ['an alias', 'a: &x 1\nb: *x\n', 2, 4, /Aliases/],
    ['a merge key', 'a: &x {b: 1}\nc: {<<: *x}\n', 2, 9, /Aliases/],
    ['a tag', 'title: !!js/function x\n', 1, 8, /Tags|cannot be read as YAML/],
    ['two documents', 'a: 1\n---\nb: 2\n', 2, 1, /more than one document/],
    ['an open bracket', 'a: [1, 2\nb: 3\n', 2, 1, /bracket above is not closed/],
    ['an open quote', 'title: "abc\n', 2, 1, /YAML/],
    ['a list', '- 1\n- 2\n', 1, 1, /not a group of keys/],
    ['a number', '42\n', 1, 1, /not a group of keys/],
    ['only a comment', '# nothing\n', 1, 1, /not a group of keys/],
    ['a key that is a list', '? [a, b]\n: 1\n', 1, 3, /key/],
    ['octal', 'a: 012\n', 1, 4, /ordinary figures/],
    ['hexadecimal', 'a: {b: [1, 0x1F]}\n', 1, 12, /ordinary figures/],
    ['not a number', 'a: .nan\n', 1, 4, /not a finite number/],
    ['infinity', 'a: -.inf\n', 1, 4, /not a finite number/],
    ['an overflow', 'a: 1e999\n', 1, 4, /not a finite number/],
  ])('%s', async (_, text, line, column, words) => {
    const [problem] = await problemsIn(text);
    expect(problem?.message).toMatch(words);
    expect({ line: problem?.line, column: problem?.column }).toEqual({ line, column });
  });

  it('a number in odd figures names its key', async () => {
    const problems = await problemsIn(changed(demo, '[320, 165], [32', '[320, 1e999], [032'));
    expect(problems.map(keyOf)).toEqual(['pan.floor_inside.2.1', 'pan.floor_inside.3.0']);
  });
});

describe('texts made to stall or overflow', () => {
  const bomb = `a: &a [x, x, x, x, x, x, x, x, x]\n${'bcdefghi'
    .split('')
    .map((key, i) => `${key}: &${key} [${Array.from({ length: 9 }, () => `*${'abcdefgh'[i]}`).join(', ')}]\n`)
    .join('')}`;
  it.each([
    ['an alias bomb', bomb, /Aliases/],
    ['400,000 brackets', `a: ${'['.repeat(400_000)}`, /nested more than 20 deep/],
    ['400,000 braces', `${'{a: '.repeat(400_000)}`, /nested more than 20 deep/],
    ['400,000 list marks', `a:\n ${'- '.repeat(400_000)}x`, /nested more than 20 deep/],
    ['300,000 question marks', `${'? '.repeat(300_000)}x`, /nested more than 20 deep/],
    ['1,400 indents', Array.from({ length: 1400 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), /indented by/],
    ['6,000 keys', Array.from({ length: 6000 }, (_, i) => `k${i}: 1`).join('\n'), /far more than a design/],
    [
      '60,000 keys',
      Array.from({ length: 60_000 }, (_, i) => `k${i}: 1`).join('\n'),
      /far more than a design/,
    ],
    ['900,000 closing brackets', '}'.repeat(900_000), /far more than a design/],
    ['200,000 tags', `a: ${'!!x '.repeat(200_000)}`, /far more than a design/],
    ['900,000 empty lines', `a: 1${'\n'.repeat(900_000)}`, /far more than a design|not a key/],
  ])('%s', async (_, text, words) => {
    const begun = performance.now();
    const [problem] = await problemsIn(text);
    expect(problem?.message).toMatch(words);
    expect(problem?.line).toBeGreaterThanOrEqual(1);
    // Seconds would mean a parser that was let loose on it; the lexer alone takes a fraction of one.
    expect(performance.now() - begun).toBeLessThan(5_000);
  });
});

it('the place of a bracket too many is its own', async () => {
  const [problem] = await problemsIn(`a: 'b'\n# [[[\nc: ${'['.repeat(30)}`);
  // 20 brackets are let through; the 21st stands 3 + 21 characters in.
  expect([problem?.line, problem?.column]).toEqual([3, 24]);
});

describe('values made to get through', () => {
  it('a title of a million characters', async () => {
    const text = changed(SMALLEST, 'title: Smallest', `title: ${'a'.repeat(1_000_000)}`);
    const [problem] = await problemsIn(text);
    expect(problem?.message).toBe('title is 1000000 characters long; it may have 200.');
    expect((problem?.found ?? '').length).toBeLessThan(80);
    expect([problem?.line, problem?.column]).toEqual([2, 8]);
  });

  it('line breaks and hidden characters in names', async () => {
    for (const title of ['"a\\nb"', '"a\\u0000b"', '"a\\u202Eb"', '"a\\u2028b"']) {
      const [problem] = await problemsIn(changed(SMALLEST, 'title: Smallest', `title: ${title}`));
      expect(problem?.message).toMatch(/line break or an invisible character/);
    }
  });

  it.each(['__proto__', 'constructor', 'toString', 'hasOwnProperty'])('the key %s', async (key) => {
    for (const text of [
      `${SMALLEST}${key}: {polluted: 1}\n`,
      changed(SMALLEST, '{fill: 7.2 L}', `{fill: 7.2 L, ${key}: {polluted: 1}}`),
      `${SMALLEST}prices: {${key}: 1}\n`,
    ]) {
      const problems = await problemsIn(text);
      expect(problems.map(({ code }) => code)).toEqual(['input-key']);
      expect({ line: problems[0]?.line, column: problems[0]?.column }).toEqual(placeIn(text, key));
    }
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('lists longer than any pan', async () => {
    const points = Array.from({ length: 100 }, (_, i) => `[${600 - i}, 50]`).join(', ');
    const [problem] = await problemsIn(SMALLEST.replace(/floor_inside: .*/, `floor_inside: [${points}]`));
    expect(problem?.message).toBe('pan.floor_inside has 100 entries; it must have 2 to 60.');
  });

  it('numbers beyond any car', async () => {
    for (const value of ['1e300', '-1e300', '99999999 m', '1e-400']) {
      const text = changed(SMALLEST, '{at: [140, 0]}', `{at: [140, 0], mouth: ${value}}`);
      const [problem] = await problemsIn(text);
      expect(problem?.code).toBe('input-range');
    }
  });

  it('values that only a program could hand over', () => {
    const cyclic: Record<string, unknown> = { format: 1 };
    cyclic.engine = cyclic;
    for (const raw of [cyclic, Number.NaN, new Map(), new Date(0), () => 1, Symbol('x'), 10n]) {
      expect(() => readDesign(raw)).toThrow(PanError);
    }
  });
});

describe('chance', () => {
  const seed = 20_261_125;

  it(`a design with pieces torn out or put in is read or refused with a place, never worse (seed ${seed})`, async () => {
    const pieces = [
      '[',
      ']',
      '{',
      '}',
      ': ',
      ', ',
      '\n',
      '  ',
      '- ',
      '"',
      "'",
      '#',
      '*',
      '&',
      '!',
      '1e999',
      '-',
      'unknown',
      'null',
      '\t',
      '~',
      '|',
      '0',
      '٣',
    ];
    await fc.assert(
      fc.asyncProperty(
        fc.nat(demo.length),
        fc.nat(12),
        fc.array(fc.constantFrom(...pieces), { maxLength: 4 }),
        async (at, cut, put) => {
          const text = demo.slice(0, at) + put.join('') + demo.slice(at + cut);
          try {
            await readDesignText(text);
          } catch (error) {
            if (!(error instanceof PanError)) throw error;
            for (const { line, column, message } of error.problems) {
              expect(line).toBeGreaterThanOrEqual(1);
              expect(column).toBeGreaterThanOrEqual(1);
              expect(line).toBeLessThanOrEqual(text.split('\n').length + 1);
              expect(message).not.toMatch(/undefined|\[object|NaN \w/);
            }
          }
        },
      ),
      { seed, numRuns: 400 },
    );
  });

  it(`any data at all is read or refused (seed ${seed})`, () => {
    fc.assert(
      fc.property(fc.anything({ withMap: true, withDate: true, withNullPrototype: true }), (raw) => {
        for (const whole of [
          raw,
          {
            format: 1,
            title: raw,
            units: 'mm',
            engine: raw,
            oil: { fill: raw },
            pan: raw,
            pickup: { at: raw, route: raw },
            limits: raw,
            baffles: [raw],
            manoeuvres: [raw],
          },
        ]) {
          expect(() => readDesign(whole)).toThrow(PanError);
        }
      }),
      { seed, numRuns: 300 },
    );
  });
});
