import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { openSizeWorkers } from 'pan-cli/commands/size-workers.js';
import { posed, requestFor, type SizeReport, sizeReport } from 'pan-core';
import { NOTHING_BESIDE } from 'pan-core/size/problem.js';
import { expect, it } from 'vitest';
import { parse } from 'yaml';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const program = pathToFileURL(here('../../packages/pan-cli/dist/part-size-worker.js'));
const file: unknown = parse(readFileSync(here('../../packages/pan-cli/examples/two-wings.yaml'), 'utf8'));
const free = { what: 'fill', from: 8.2e6, to: 8.6e6, step: 2e5 };
const request = requestFor('most oil', [free], { seed: 7 });

const sizedOn = async (threads: number): Promise<SizeReport> => {
  const workers = openSizeWorkers({ file, beside: NOTHING_BESIDE }, undefined, threads, program);
  const search = sizeReport(posed(file), { request, trade: false, baffles: false });
  try {
    let step = search.next();
    while (step.done !== true) {
      const { request: asked, questions } = step.value;
      step = search.next(await workers.ask(questions.map((question) => ({ request: asked, question }))));
    }
    return step.value;
  } finally {
    await workers.close();
  }
};

it('one thread and two give the same answer for a seed, to the last bit', async () => {
  const one = await sizedOn(1);
  const two = await sizedOn(2);
  expect(two.tried).toBeGreaterThan(20);
  expect(two).toStrictEqual(one);
});
