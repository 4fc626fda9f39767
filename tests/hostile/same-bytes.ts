import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Where a program runs: another node, another clock, other habits of writing numbers and sorting words. */
export interface Place {
  readonly name: string;
  readonly node: string;
  readonly env: Readonly<Record<string, string>>;
}

/** A command by name, with what it writes into a folder; whatever it prints counts too. */
export interface Written {
  readonly name: string;
  readonly args: (folder: string) => readonly string[];
}

/** One digest of what a command printed and of every file it wrote, by name. */
export const digestOf = (pan: string, { args }: Written, { node, env }: Place): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-bytes-'));
  try {
    const ran = spawnSync(node, [pan, ...args(folder)], {
      encoding: 'utf8',
      env: { ...process.env, ...env },
      maxBuffer: 1e9,
    });
    const hash = createHash('sha256').update(`${ran.status}\n${ran.stdout.replaceAll(folder, '')}`);
    const names = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length))
      .sort();
    for (const name of names)
      hash
        .update(name)
        .update('\0')
        .update(readFileSync(folder + name));
    return `${names.length} files ${hash.digest('hex')}`;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** Zones on both sides of the date line and between whole hours; languages with other digits, commas and letters. */
export const HABITS: readonly { readonly name: string; readonly env: Readonly<Record<string, string>> }[] = [
  { name: 'UTC, C', env: { TZ: 'UTC', LC_ALL: 'C', LANG: 'C' } },
  {
    name: 'Kathmandu, Turkish',
    env: { TZ: 'Asia/Kathmandu', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' },
  },
  {
    name: 'St John’s, German',
    env: { TZ: 'America/St_Johns', LC_ALL: 'de_DE.UTF-8', LANG: 'de_DE.UTF-8' },
  },
  {
    name: 'Kiritimati, Arabic',
    env: { TZ: 'Pacific/Kiritimati', LC_ALL: 'ar_EG.UTF-8', LANG: 'ar_EG.UTF-8' },
  },
];
