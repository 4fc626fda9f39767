// Bundles the command line into dist/pan.js. --if-stale builds only when a source is newer.
import { spawnSync } from 'node:child_process';
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

// What the module bundle and the stored program have in common.
const shared = () => {
  const { version } = JSON.parse(readFileSync(join(here, 'package.json'), 'utf8'));
  return {
    bundle: true,
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
    logLevel: 'warning',
  };
};

// `pan check` once more as one function of a script, which is what the engine can keep its own work on.
const onlyCheck = {
  name: 'only-check',
  setup: ({ onResolve }) => {
    onResolve({ filter: /./ }, ({ kind, path, importer }) =>
      kind === 'dynamic-import' && basename(importer) === 'list.ts' && path !== './check.js'
        ? { path, external: true }
        : null,
    );
  },
};
const storedProgram = async (build) => {
  const common = shared();
  const { outputFiles } = await build({
    ...common,
    entryPoints: { 'part-stored': join(here, 'src/main.ts') },
    outdir: folder,
    entryNames: '[name]-[hash]',
    outExtension: { '.js': '.cjs' },
    format: 'cjs',
    charset: 'ascii',
    supported: { 'dynamic-import': false },
    define: { ...common.define, 'import.meta.url': 'panUrl' },
    plugins: [...common.plugins, onlyCheck],
    banner: { js: '(function(exports,require,panUrl){"use strict";const module={exports};' },
    footer: { js: 'exports.main=module.exports.main})' },
  });
  return outputFiles[0];
};

const bundle = async () => {
  const { build } = await import('esbuild');
  const common = shared();
  const stored = await storedProgram(build);
  const { outputFiles } = await build({
    ...common,
    entryPoints: {
      pan: join(here, 'src/start.ts'),
      'part-size-worker': join(here, 'src/commands/size-worker.ts'),
      'part-limits-worker': join(here, 'src/commands/limits-worker.ts'),
    },
    outdir: folder,
    entryNames: '[name]',
    chunkNames: 'part-[name]-[hash]',
    splitting: true,
    format: 'esm',
    define: { ...common.define, PAN_STORED: JSON.stringify(basename(stored.path, '.cjs')) },
    banner: {
      js: "#!/usr/bin/env node\nimport { createRequire as panRequire } from 'node:module'; const require = panRequire(import.meta.url);",
    },
  });
  return [...outputFiles, stored, ...(await bundlePage(build))];
};

// What this engine compiles of the stored program, beside it and under the engine's version.
const keepCompiled = (program) => {
  const result = program.replace(/\.cjs$/, `-${process.versions.v8}-${process.arch}.bin`);
  const { status, stderr } = spawnSync(process.execPath, [join(here, 'store-program.mjs'), program, result], {
    stdio: ['ignore', 'ignore', 'pipe'],
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`The stored program could not be run: ${stderr}`);
  return basename(result);
};

// Parts first and the entry last, each by rename: a run that starts meanwhile finds a whole program.
const put = (files) => {
  mkdirSync(folder, { recursive: true });
  const last = (file) => (basename(file.path) === 'pan.js' ? 1 : 0);
  const kept = new Set(files.map((file) => basename(file.path)));
  for (const file of [...files].sort((a, b) => last(a) - last(b))) {
    const draft = `${file.path}.${process.pid}`;
    writeFileSync(draft, file.contents, { mode: 0o755 });
    renameSync(draft, file.path);
    if (file.path.endsWith('.cjs')) kept.add(keepCompiled(file.path));
  }
  for (const name of readdirSync(folder)) {
    if (name.startsWith('part-') && !kept.has(name)) rmSync(join(folder, name), { force: true });
  }
};

if (!process.argv.includes('--if-stale') || stale()) put(await bundle());
