import { Buffer } from 'node:buffer';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const core = fileURLToPath(new URL('../../packages/pan-core/src/index.ts', import.meta.url));

/** A program that uses the library, bundled as a page or worker would load it: one file, no module of Node's. */
export const bundled = async (program: string, format: 'esm' | 'iife' = 'iife'): Promise<string> => {
  const { outputFiles, warnings } = await build({
    stdin: { contents: program, resolveDir: fileURLToPath(new URL('.', import.meta.url)), loader: 'ts' },
    bundle: true,
    write: false,
    minify: true,
    format,
    globalName: 'answer',
    platform: 'browser',
    target: 'es2022',
    alias: { 'pan-core': core },
    logLevel: 'silent',
  });
  const told = warnings.filter(({ id }) => id !== 'ignored-bare-import');
  if (told.length > 0) throw new Error(told.map(({ text }) => text).join('\n'));
  return Buffer.from(outputFiles[0]?.contents ?? []).toString('utf8');
};

/** Reads, checks and draws: what a page would do with a design. */
export const PROGRAM = `
  import { buildPan, checkDesign, cutParts, barePartDxf, panelsOf, platesOf, readDesign } from 'pan-core';
  import { design as keys } from '../../packages/pan-core/examples/design.mjs';
  const read = readDesign(keys);
  const model = buildPan(read.design);
  const parts = cutParts(read.design, model.profile, platesOf(model), panelsOf(model));
  export const text = JSON.stringify({ report: checkDesign(read), parts: parts.map((part) => barePartDxf(part, { title: read.design.title, warning: null, sentences: [] })) });
`;
