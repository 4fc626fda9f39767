// Runs the long tests of this folder, or those that are named: node tests/nightly/run.mjs mutated-designs
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = fileURLToPath(new URL('.', import.meta.url));
const root = join(here, '../..');
const named = process.argv.slice(2);
const all = readdirSync(here).filter((name) => name.endsWith('.ts'));
const chosen = all
  .map((name) => name.replace('.ts', ''))
  .filter((name) => named.length === 0 || named.includes(name));

const folder = mkdtempSync(join(tmpdir(), 'pan-nightly-'));
// What the program looks up by name when it runs.
symlinkSync(join(root, 'packages/pan-cli/node_modules'), join(folder, 'node_modules'));
try {
  for (const name of chosen) {
    const program = join(folder, `${name}.mjs`);
    await build({
      entryPoints: [join(here, `${name}.ts`)],
      outfile: program,
      bundle: true,
      format: 'esm',
      platform: 'node',
      banner: {
        js: "import { createRequire as nightlyRequire } from 'node:module'; const require = nightlyRequire(import.meta.url);",
      },
      plugins: [
        {
          name: 'sources',
          setup: ({ onResolve }) => {
            onResolve({ filter: /^pan-core$/ }, () => ({
              path: join(root, 'packages/pan-core/src/index.ts'),
            }));
            onResolve({ filter: /^pan-cli\// }, ({ path }) => ({
              path: join(root, path.replace('pan-cli/', 'packages/pan-cli/src/').replace(/\.js$/, '.ts')),
            }));
          },
        },
      ],
    });
    console.log(`\n${name}`);
    const { status } = spawnSync(process.execPath, ['--max-old-space-size=512', program], {
      stdio: 'inherit',
      cwd: root,
    });
    if (status !== 0) process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
