import { type Context, createContext, runInContext } from 'node:vm';
import { Worker } from 'node:worker_threads';
import { barePartDxf, buildPan, checkDesign, cutParts, panelsOf, platesOf, readDesign } from 'pan-core';
import { expect, it } from 'vitest';
import { design as keys } from '../../packages/pan-core/examples/design.mjs';
import { bundled, PROGRAM } from './library.js';

/** The same answer, computed here from the sources. */
const expected = (): string => {
  const read = readDesign(keys);
  const model = buildPan(read.design);
  const words = { title: read.design.title, warning: null, sentences: [] };
  const parts = cutParts(read.design, model.profile, platesOf(model), panelsOf(model));
  return JSON.stringify({ report: checkDesign(read), parts: parts.map((part) => barePartDxf(part, words)) });
};

/** Everything a realm knows by name, but for the bundle's answer and the object that zod keeps its settings in. */
const namesIn = (realm: Context): readonly string[] =>
  (runInContext('Object.getOwnPropertyNames(globalThis)', realm) as string[])
    .filter((name) => !['answer', '__zod_globalConfig'].includes(name))
    .sort();

it('bundled for a browser it gives the same answer with nothing but the language itself', async () => {
  // An empty realm has no process, require, Buffer, fetch, timers, console or document.
  const realm = createContext({});
  const before = namesIn(realm);
  const text = runInContext(`${await bundled(PROGRAM)}\nanswer.text`, realm);
  expect(text).toBe(expected());
  const after = namesIn(realm);
  expect(after).toEqual(before);
});

it('in a worker it gives the same answer', async () => {
  const program = await bundled(PROGRAM);
  const worker = new Worker(
    `const { parentPort } = require('node:worker_threads');\n${program}\nparentPort.postMessage(answer.text);`,
    { eval: true },
  );
  const text = await new Promise((done, fail) => {
    worker.once('message', done);
    worker.once('error', fail);
  });
  await worker.terminate();
  expect(text).toBe(expected());
});

// Sizes of minified bundles, in bytes. What is not used must not be paid for.
it('shakes: a program that uses a part carries that part', async () => {
  const size = async (program: string): Promise<number> => (await bundled(program, 'esm')).length;
  const all = await size("export * from 'pan-core';");
  const levels = await size("export { createOilSystem, buildPan, levelReport } from 'pan-core';");
  const quantity = await size("export { readQuantity } from 'pan-core';");
  expect(await size("import 'pan-core';")).toBe(0);
  expect(quantity).toBeLessThan(0.015 * all);
  expect(levels).toBeLessThan(0.06 * all);
});

it('has no effect on being loaded, even where a bundler is not told so', async () => {
  const realm = createContext({});
  const before = namesIn(realm);
  runInContext(
    await bundled("import * as core from 'pan-core'; export const names = Object.keys(core);"),
    realm,
  );
  const after = namesIn(realm);
  expect(after).toEqual(before);
});
