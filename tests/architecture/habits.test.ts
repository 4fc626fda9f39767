import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  anyTypes,
  classesBeside,
  defaultExports,
  idleTests,
  LONGEST,
  mutableModuleState,
  silencedFaults,
  tooLong,
} from './habit-rules.js';
import { readSources, root, type Source, source } from './source-tree.js';

const code = readSources('packages').filter((file) => /^packages\/[^/]+\/src\//.test(file.path));
const tests = readSources('tests');
const otherClasses = classesBeside('PanError');

test('sources and tests are read', () => {
  expect(code.length).toBeGreaterThan(10);
  expect(tests.length).toBeGreaterThan(5);
});

const rules: readonly [string, (file: Source) => readonly string[], readonly string[]][] = [
  [
    'default export',
    defaultExports,
    ['export default 1;', 'export default function f() {}', 'const a = 1; export { a as default };'],
  ],
  ['class beside the error type', otherClasses, ['class Pan {}', 'export const Pan = class {};']],
  ['any', anyTypes, ['const a: any = 1;', 'const a = 1 as any;', 'const a: Record<string, any[]> = {};']],
  ['variable of a module', mutableModuleState, ['let count = 0;', 'var count = 0;', 'export let count = 0;']],
  [`file over ${LONGEST} lines`, tooLong, ['const a = 1;\n'.repeat(LONGEST + 1)]],
  ['silenced checker', silencedFaults, [`// @ts-${'ignore'}`, `// biome-${'ignore'} lint: no`]],
];

test.each(rules)('no source has a %s', (_, rule) => {
  expect(code.flatMap(rule)).toEqual([]);
});

test.each(
  rules.flatMap(([name, rule, broken]) =>
    broken.map((text) => [name, text.slice(0, 60), text, rule] as const),
  ),
)('a %s is found: %s', (_, __, text, rule) => {
  expect(rule(source('packages/pan-core/src/pan/a.ts', text)).length).toBeGreaterThan(0);
});

test('what keeps to the habits passes', () => {
  const text =
    'export class PanError extends Error {}\nexport const f = (): number => { let a = 1; a += 1; return a; };\n';
  const file = source('packages/pan-core/src/errors/a.ts', text);
  expect(rules.flatMap(([, rule]) => rule(file))).toEqual([]);
  expect(tooLong(source('a.ts', 'const a = 1;\n'.repeat(LONGEST)))).toEqual([]);
});

test('no test idles, runs alone or compares with its own past output', () => {
  expect(tests.flatMap(idleTests)).toEqual([]);
  expect(tests.flatMap(silencedFaults)).toEqual([]);
  expect(tests.flatMap(anyTypes)).toEqual([]);
});

test('no test is too long to read', () => {
  expect(tests.flatMap(tooLong)).toEqual([]);
});

test.each(['test.skip("a", () => {});', 'describe.only("a", () => {});', 'expect(1).toMatchSnapshot();'])(
  'an idle test is found: %s',
  (text) => {
    expect(idleTests(source('tests/a.test.ts', text))).toHaveLength(1);
  },
);

const TOP =
  /^(packages|tests|reference|README\.md|DEVELOPERS\.md|CHANGELOG\.md|LICENSE|package\.json|pnpm-workspace\.yaml|pnpm-lock\.yaml|tsconfig(\.\w+)?\.json|vitest\.config\.ts|biome\.json|node_modules|\..+)$/;

test('nothing lies at the top that has no place there', () => {
  expect(readdirSync(root).filter((name) => !TOP.test(name))).toEqual([]);
});

test.each(['scripts', 'notes.md', 'out', 'tsconfig.tsbuildinfo', 'src'])(
  '%s would have no place at the top',
  (name) => {
    expect(TOP.test(name)).toBe(false);
  },
);
