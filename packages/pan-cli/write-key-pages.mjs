// Writes the pages that follow from tables of the program: the editors' schema beside the examples, docs/design-keys.md
// from the keys and docs/errors.md from the codes.
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const { outputFiles } = await build({
  stdin: {
    contents:
      "export { designJsonSchema } from 'pan-core'; export { keyPage } from './src/read/key-page.ts'; export { errorPage } from './src/terminal/error-page.ts';",
    resolveDir: here,
    loader: 'ts',
  },
  bundle: true,
  write: false,
  format: 'esm',
  platform: 'node',
  external: ['mathjs'],
  alias: { 'pan-core': join(here, '../pan-core/src/index.ts') },
});
const { designJsonSchema, errorPage, keyPage } = await import(
  `data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString('base64')}`
);

writeFileSync(
  join(here, 'examples/pan-design.schema.json'),
  `${JSON.stringify(designJsonSchema(), null, 1)}\n`,
);
writeFileSync(join(here, 'docs/design-keys.md'), keyPage());
writeFileSync(join(here, 'docs/errors.md'), errorPage());
