// Bundles the command line into dist/pan.js. --if-stale builds only when a source is newer.
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const core = join(here, '../pan-core');
const folder = join(here, 'dist');
const entry = join(folder, 'pan.js');

const newest = (path) => {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
};

const inputs = [
  join(here, 'src'),
  join(core, 'src'),
  join(here, 'package.json'),
  join(core, 'package.json'),
  fileURLToPath(import.meta.url),
];
const stale = () => !existsSync(entry) || Math.max(...inputs.map(newest)) > statSync(entry).mtimeMs;

// yargs lays its help out with a full measure of every script and emoji, which costs a quarter of a bare
// node start. Help here is plain text, where one code point fills one column.
const plainWidths = {
  name: 'plain-widths',
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /^string-width$/ }, () => ({ path: 'string-width', namespace: 'plain' }));
    onLoad({ filter: /.*/, namespace: 'plain' }, () => ({
      contents: 'export default (text) => [...text].length;',
    }));
  },
};

// The program and styles of the page, which carry pan-core's oil and nothing of Node.
const bundlePage = async (build) => {
  const { outputFiles } = await build({
    entryPoints: { page: join(here, 'src/page/main.tsx'), 'page-style': join(here, 'src/page/style.css') },
    outdir: folder,
    entryNames: '[name]',
    bundle: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    minify: true,
    charset: 'utf8',
    legalComments: 'none',
    write: false,
    jsx: 'automatic',
    jsxImportSource: 'preact',
    alias: { 'pan-core': join(core, 'src/index.ts') },
    logLevel: 'warning',
  });
  return outputFiles;
};

const bundle = async () => {
  const { build } = await import('esbuild');
  const { version } = JSON.parse(readFileSync(join(here, 'package.json'), 'utf8'));
  const { outputFiles } = await build({
    entryPoints: {
      pan: join(here, 'src/main.ts'),
      'part-size-worker': join(here, 'src/commands/size-worker.ts'),
      'part-limits-worker': join(here, 'src/commands/limits-worker.ts'),
    },
    outdir: folder,
    entryNames: '[name]',
    chunkNames: 'part-[name]-[hash]',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    minify: true,
    legalComments: 'none',
    write: false,
    jsx: 'automatic',
    jsxImportSource: 'preact',
    define: { PAN_VERSION: JSON.stringify(version) },
    alias: { 'pan-core': join(core, 'src/index.ts') },
    plugins: [plainWidths],
    banner: {
      js: "#!/usr/bin/env node\nimport { createRequire as panRequire } from 'node:module'; const require = panRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
  return [...outputFiles, ...(await bundlePage(build))];
};

// Parts first and the entry last, each by rename: a run that starts meanwhile finds a whole program.
const put = (files) => {
  mkdirSync(folder, { recursive: true });
  const last = (file) => (basename(file.path) === 'pan.js' ? 1 : 0);
  for (const file of [...files].sort((a, b) => last(a) - last(b))) {
    const draft = `${file.path}.${process.pid}`;
    writeFileSync(draft, file.contents, { mode: 0o755 });
    renameSync(draft, file.path);
  }
  const kept = new Set(files.map((file) => basename(file.path)));
  for (const name of readdirSync(folder)) {
    if (name.startsWith('part-') && !kept.has(name)) rmSync(join(folder, name), { force: true });
  }
};

if (!process.argv.includes('--if-stale') || stale()) put(await bundle());
