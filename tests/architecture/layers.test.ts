import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { CORE, layerFaults } from './layer-rule.js';
import { purityFaults } from './purity-rule.js';
import { readSources, root, source } from './source-tree.js';

const core = readSources(CORE);
const { dependencies } = JSON.parse(readFileSync(join(root, 'packages/pan-core/package.json'), 'utf8')) as {
  dependencies: Record<string, string>;
};
const packages = Object.keys(dependencies);

test('the core is read', () => {
  expect(core.length).toBeGreaterThan(10);
});

test('each layer imports only what stands before it, through its index', () => {
  expect(core.flatMap(layerFaults)).toEqual([]);
});

test('the core has no file system, clock, chance, locale or console', () => {
  expect(core.flatMap((file) => purityFaults(file, packages))).toEqual([]);
});

test.each([
  ['backwards', 'pan/a.ts', `import { a } from '../oil/index.js';`],
  ['backwards by type', 'errors/a.ts', `import type { A } from '../numeric/index.js';`],
  ['backwards by re-export', 'geometry/a.ts', `export * from '../design/index.js';`],
  ['backwards when called', 'design/a.ts', `const load = () => import('../pan/index.js');`],
  ['backwards by type query', 'design/a.ts', `type A = import('../pan/index.js').A;`],
  ['sideways', 'oil/a.ts', `import { a } from '../sheet/index.js';`],
  ['sideways', 'sheet/a.ts', `import { a } from '../clearance/index.js';`],
  ['past an index', 'oil/a.ts', `import { a } from '../pan/profile.js';`],
  ['past an index from a subfolder', 'oil/deep/a.ts', `import { a } from '../../pan/profile.js';`],
  ['past an index from the top', 'index.ts', `export * from './pan/profile.js';`],
  ['the top from a layer', 'oil/a.ts', `import { a } from '../index.js';`],
  ['a folder that is no layer', 'helpers/a.ts', `export const a = 1;`],
  ['from a folder that is no layer', 'oil/a.ts', `import { a } from '../helpers/index.js';`],
])('an import that runs %s is found', (_, path, text) => {
  expect(layerFaults(source(`${CORE}/${path}`, text))).toHaveLength(1);
});

test.each([
  ['oil/a.ts', `import { a } from '../pan/index.js'; import { b } from './b.js'; import c from './c.json';`],
  ['oil/deep/a.ts', `import { a } from '../../pan/index.js'; import { b } from '../b.js';`],
  ['index.ts', `export * from './pan/index.js';`],
])('an import that runs forwards passes in %s', (path, text) => {
  expect(layerFaults(source(`${CORE}/${path}`, text))).toEqual([]);
});

test.each([
  `import { readFileSync } from 'node:fs';`,
  `import { readFileSync } from 'fs';`,
  `import { cloneDeep } from 'lodash';`,
  `export const now = () => new Date();`,
  `export const now = () => Date.now();`,
  `export const chance = () => Math.random();`,
  `export const cube = (x: number) => x ** 3;`,
  `export const root = (x: number) => Math.pow(x, 0.2);`,
  `console.log(1);`,
  `export const here = process.cwd();`,
  `export const text = (1.5).toLocaleString();`,
  `export const order = ['b'].sort((a, b) => a.localeCompare(b));`,
  `export const world = { process };`,
])('what reaches outside is found: %s', (text) => {
  expect(purityFaults(source(`${CORE}/oil/a.ts`, text), ['zod'])).toHaveLength(1);
});

test('a key or a name of our own that only sounds so passes', () => {
  const text = `import { z } from 'zod';
    export const weld = { process: 'TIG' };
    export const told = (process: string) => [process, weld.process];`;
  expect(purityFaults(source(`${CORE}/weld/a.ts`, text), ['zod'])).toEqual([]);
});
