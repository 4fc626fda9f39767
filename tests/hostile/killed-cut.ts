import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** One digest of everything in a folder, names and bytes; empty where there is no folder. */
const digestOf = (folder: string): string => {
  let names: readonly string[];
  try {
    names = readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort();
  } catch {
    return '';
  }
  const hash = createHash('sha256');
  for (const name of names) hash.update(name.slice(folder.length)).update('\0').update(readFileSync(name));
  return hash.digest('hex');
};

export interface Killed {
  readonly end: 'old' | 'new' | 'none' | 'mixture';
  readonly afterMs: number;
  readonly killed: boolean;
  /** What lies in the folder afterwards, beside the set. */
  readonly stands: string;
}

export interface Kills {
  readonly runs: readonly Killed[];
  /** Whether a file edited in the old set was still somewhere after every kill. */
  readonly editsKept: boolean;
  /** Whether a whole run afterwards wrote the new set. */
  readonly recovered: boolean;
}

const EDIT = 'an edit by hand';

const holdsEdit = (folder: string): boolean =>
  readdirSync(folder, { recursive: true, withFileTypes: true }).some(
    (entry) => entry.isFile() && readFileSync(join(entry.parentPath, entry.name), 'latin1').includes(EDIT),
  );

/**
 * Kills `pan cut` again and again at a random moment while it replaces a set in which a file was edited, and looks
 * at what stands there afterwards. SIGKILL: nothing gets to tidy up.
 */
export const killCuts = async (
  pan: string,
  design: string,
  count: number,
  next: () => number,
  tell: (done: number) => void = () => undefined,
): Promise<Kills> => {
  const root = mkdtempSync(join(tmpdir(), 'pan-kill-'));
  const built = statSync(pan).mtimeMs;
  try {
    const fresh = join(root, 'fresh');
    const cut = (folder: string, ...more: readonly string[]) => [
      pan,
      'cut',
      design,
      '--out',
      folder,
      ...more,
    ];
    const start = performance.now();
    spawnSync(process.execPath, cut(fresh, '--paper', 'Letter'));
    const whole = performance.now() - start;
    const wanted = digestOf(fresh);
    const runs: Killed[] = [];
    let editsKept = true;
    let recovered = true;
    for (let i = 0; i < count; i++) {
      const place = join(root, `run-${i}`);
      const set = join(place, 'set');
      mkdirSync(place);
      spawnSync('cp', ['-r', join(root, i === 0 ? 'fresh' : 'base'), set]);
      if (i === 0) {
        rmSync(set, { recursive: true });
        spawnSync(process.execPath, cut(set));
        spawnSync('cp', ['-r', set, join(root, 'base')]);
      }
      writeFileSync(join(set, '00-read-first.txt'), EDIT);
      const old = digestOf(set);
      // Half of the kills anywhere, half where the writing is.
      const afterMs = whole * (next() < 0.5 ? next() : 0.7 + 0.35 * next());
      const killed = await new Promise<boolean>((done) => {
        const child = spawn(process.execPath, cut(set, '--paper', 'Letter', '--replace'), {
          stdio: 'ignore',
        });
        const timer = setTimeout(() => child.kill('SIGKILL'), afterMs);
        child.on('exit', (_, signal) => {
          clearTimeout(timer);
          done(signal === 'SIGKILL');
        });
      });
      const found = digestOf(set);
      const end = found === old ? 'old' : found === wanted ? 'new' : found === '' ? 'none' : 'mixture';
      const entries = existsSync(set) ? readdirSync(set, { recursive: true }).length : 0;
      const beside = readdirSync(place).join(', ');
      runs.push({ end, afterMs, killed, stands: `${beside}; ${entries} entries in the set` });
      if (!holdsEdit(place)) editsKept = false;
      if (i % 25 === 0) {
        spawnSync(process.execPath, cut(set, '--paper', 'Letter', '--replace'));
        if (digestOf(set) !== wanted) recovered = false;
      }
      rmSync(place, { recursive: true, force: true });
      tell(i + 1);
    }
    // Another program writes another set, which would look like a mixture.
    if (statSync(pan).mtimeMs !== built) throw new Error('pan was built anew meanwhile: run this again');
    return { runs, editsKept, recovered };
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
};
