import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
export const pan = here('../../packages/pan-cli/dist/pan.js');

export const example = (name: string): string => here(`../../packages/pan-cli/examples/${name}.yaml`);

/** The bundle a user runs, built again when a source is newer. */
export const buildPan = (): void => {
  execFileSync(process.execPath, [here('../../packages/pan-cli/build.mjs'), '--if-stale']);
};

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export const runPan = (args: readonly string[], cwd?: string, env: NodeJS.ProcessEnv = {}): Ran => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [pan, ...args], {
    encoding: 'utf8',
    maxBuffer: 1e8,
    timeout: 60_000,
    env: { PATH: process.env.PATH, ...env },
    ...(cwd === undefined ? {} : { cwd }),
  });
  return { code: status, out: stdout, err: stderr };
};

/** A folder that is gone after `use`, whatever happens in it. */
export const inFolder = <T>(use: (folder: string) => T): T => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-hostile-'));
  try {
    return use(folder);
  } finally {
    chmodSync(folder, 0o755);
    rmSync(folder, { recursive: true, force: true });
  }
};

/** The same for what takes time. */
export const folderFor = async <T>(use: (folder: string) => T | Promise<T>): Promise<T> => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-hostile-'));
  try {
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

export const inFile = <T>(content: string | Uint8Array, use: (file: string, folder: string) => T): T =>
  inFolder((folder) => {
    const file = join(folder, 'pan.yaml');
    writeFileSync(file, content);
    return use(file, folder);
  });

export const names = (folder: string): readonly string[] => readdirSync(folder).sort();

/** Lines that only a stack trace has. */
export const STACK = /^\s+at .+[:(]\d+|node:internal|Error: /m;
