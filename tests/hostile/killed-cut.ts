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
  watch,
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

/** How long a cut takes in all, and how long from the first thing that moves in the folder to its end, ms. */
const timed = async (
  folder: string,
  args: readonly string[],
): Promise<{ whole: number; writing: number }> => {
  const start = performance.now();
  let first = start;
  const watcher = watch(folder, () => {
    if (first === start) first = performance.now();
  });
  await new Promise((done) => spawn(process.execPath, args, { stdio: 'ignore' }).on('exit', done));
  watcher.close();
  const end = performance.now();
  return { whole: end - start, writing: end - first };
};

/** Runs and kills, after a time from the start or from the first thing that moves beside the set; true: in time. */
const killedRun = (
  args: readonly string[],
  place: string,
  fromStart: boolean,
  afterMs: number,
): Promise<boolean> =>
  new Promise((done) => {
    const child = spawn(process.execPath, args, { stdio: 'ignore' });
    let timer: NodeJS.Timeout | null = null;
    const arm = (): void => {
      timer ??= setTimeout(() => child.kill('SIGKILL'), afterMs);
    };
    const watcher = watch(place, arm);
    if (fromStart) arm();
    child.on('exit', (_, signal) => {
      if (timer !== null) clearTimeout(timer);
      watcher.close();
      done(signal === 'SIGKILL');
    });
  });

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
    const { whole, writing } = await timed(root, cut(fresh, '--paper', 'Letter'));
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
      // A quarter of the kills anywhere, the others while files are written and names changed: that long after
      // something first moved beside the set.
      const anywhere = next() < 0.25;
      const afterMs = anywhere ? whole * next() : 1.1 * writing * next();
      const killed = await killedRun(cut(set, '--paper', 'Letter', '--replace'), place, anywhere, afterMs);
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
