// The sources as one module, bundled afresh: what is measured is what stands in the tree.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const from = (path) => fileURLToPath(new URL(path, import.meta.url));
const core = from('../../../packages/pan-core/src');

/** The tests import the sources by layer, as pan-core/oil/index.js. */
const layers = {
  name: 'layers',
  setup: ({ onResolve }) => {
    onResolve({ filter: /^pan-core\// }, ({ path }) => ({
      path: join(core, path.slice('pan-core/'.length).replace(/\.js$/, '.ts')),
    }));
  },
};

/** pan-core, the command line's ring of limits and sizing on two threads, and the tests' arithmetic that does not round. */
export const loadCore = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-bench-'));
  try {
    const { outputFiles } = await build({
      stdin: {
        contents: `export * from ${JSON.stringify(join(core, 'index.ts'))};
export { sharedRing } from ${JSON.stringify(from('../../../packages/pan-cli/src/commands/shared-ring.ts'))};
export { openSizeWorkers } from ${JSON.stringify(from('../../../packages/pan-cli/src/commands/size-workers.ts'))};
export { NOTHING_BESIDE } from ${JSON.stringify(join(core, 'size/problem.ts'))};
export { seededStream } from ${JSON.stringify(join(core, 'numeric/index.ts'))};
export { keepRecord } from ${JSON.stringify(from('../../run-record.ts'))};
export { compared } from ${JSON.stringify(from('../../known-best.ts'))};
export { exact, exactVolume, toNumber, upFrom } from ${JSON.stringify(from('../../fixed-point.ts'))};`,
        resolveDir: core,
      },
      bundle: true,
      format: 'esm',
      platform: 'node',
      write: false,
      plugins: [layers],
      alias: { 'pan-core': join(core, 'index.ts') },
      banner: {
        js: "import { createRequire as benchRequire } from 'node:module'; const require = benchRequire(import.meta.url);",
      },
      logLevel: 'error',
    });
    const file = join(folder, 'core.mjs');
    writeFileSync(file, outputFiles[0].contents);
    return await import(pathToFileURL(file).href);
  } finally {
    rmSync(folder, { recursive: true });
  }
};
