import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { writeSet } from 'pan-cli/write/index.js';
import { PanError } from 'pan-core';

/** What stood there before: nothing, a set as it was written, or one in which a person changed and added a file. */
export const STARTS = ['nothing', 'a set', 'an edited set'] as const;
/** Where the kill falls: at a counted change to the disk, while the new set is in the making, at any time. */
export const MOMENTS = ['at a write', 'while writing', 'at any time'] as const;

export interface Killed {
  readonly start: (typeof STARTS)[number];
  readonly moment: (typeof MOMENTS)[number];
  /** `aside`: the old set lies whole beside its place, and the next run puts it back. */
  readonly end: 'old' | 'new' | 'aside' | 'mixture';
  /** Whether the program died of the kill; a late one comes after its end. */
  readonly killed: boolean;
  /** Whether something of the writing was seen to be begun and unfinished. */
  readonly midWrite: boolean;
  /** What was wrong after the kill and after the next run; empty when all is well. */
  readonly wrong: string;
}

/** A design whose whole cut takes a second. */
export const SMALL = `format: 1
title: Small pan
units: mm
engine:
  rail: {length: 400, width: 200, seen_from: below}
  crankcase_top: 140
oil: {fill: 4 L}
pan:
  sheet: {material: aluminium 5052-H32, thickness: 3, bend_radius: 5}
  floor_inside: [[380, 90], [20, 90]]
  width_inside: 150
pickup: {at: [140, 0], gap: 8, mouth: 60, bore: 22}
`;
const EDITED = '00-read-first.txt';
const ADDED = '2-laser/measured by hand.txt';
const EDIT = 'an edit by hand';

/** One digest of everything in a folder, names and bytes; empty where there is nothing. */
const digestOf = (folder: string): string => {
  const files = filesIn(folder);
  if (files.length === 0) return '';
  const hash = createHash('sha256');
  for (const name of files) hash.update(name.slice(folder.length)).update('\0').update(readFileSync(name));
  return hash.digest('hex');
};

const filesIn = (folder: string): readonly string[] => {
  try {
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .sort();
  } catch {
    return [];
  }
};

const inSight = (place: string): readonly string[] =>
  readdirSync(place).filter((name) => !name.startsWith('.'));

/** How many files with a hand's words in them stand in plain sight. */
const editsIn = (place: string): number =>
  inSight(place)
    .flatMap((name) => filesIn(join(place, name)))
    .filter((file) => readFileSync(file, 'latin1').includes(EDIT)).length;

/** What the next run does first, in this process: it is refused, since it may replace nothing. */
const clearUp = (set: string): void => {
  try {
    writeSet(set, [{ path: 'manifest.json', content: 'next' }], false);
  } catch (error) {
    if (!(error instanceof PanError)) throw error;
  }
};

const startProgram = (args: readonly string[], env: NodeJS.ProcessEnv): ChildProcess =>
  spawn(process.execPath, args, { stdio: 'ignore', env: { PATH: process.env.PATH, ...env } });

const ended = (child: ChildProcess): Promise<boolean> =>
  new Promise((done) => child.on('exit', (_, signal) => done(signal === 'SIGKILL')));

/**
 * Kills `pan cut` again and again, with SIGKILL so that nothing gets to tidy up, and looks at what stands there
 * afterwards, at once and after the next run. The program is a copy: a build meanwhile takes parts away from
 * under it and makes sets that differ.
 *
 * @param writer Words of a program that only writes a made set, in place of the whole cut: twenty times as fast.
 */
export const killCuts = async (
  pan: string,
  count: number,
  next: () => number,
  tell: (run: Killed, done: number) => void = () => undefined,
  writer: ((from: string, to: string) => readonly string[]) | null = null,
): Promise<readonly Killed[]> => {
  const root = mkdtempSync(join(tmpdir(), 'pan-kill-'));
  try {
    cpSync(dirname(pan), join(root, 'program'), { recursive: true });
    symlinkSync(resolve(dirname(pan), '../node_modules'), join(root, 'node_modules'));
    writeFileSync(join(root, 'pan.yaml'), SMALL);
    const stopper = pathToFileURL(join(dirname(pan), '../../../tests/hostile/stop-at-write.mjs')).href;
    const cut = (folder: string, paper: string): readonly string[] => [
      '--import',
      stopper,
      join(root, 'program/pan.js'),
      'cut',
      join(root, 'pan.yaml'),
      ...['--out', folder, '--paper', paper, '--despite-fails', '--replace'],
    ];
    const once = (folder: string, paper: string, env: NodeJS.ProcessEnv = {}): void => {
      const { status, stderr } = spawnSync(process.execPath, cut(folder, paper), { env, encoding: 'utf8' });
      if (status !== 0 && status !== 1) throw new Error(`The cut that nothing stops failed: ${stderr}`);
    };
    once(join(root, 'base'), 'A4');
    cpSync(join(root, 'base'), join(root, 'fresh'), { recursive: true });
    const began = performance.now();
    once(join(root, 'fresh'), 'Letter', { PAN_COUNT_TO: join(root, 'count') });
    const wholeMs = performance.now() - began;
    const writes = Number(readFileSync(join(root, 'count'), 'utf8'));
    const wanted = digestOf(join(root, 'fresh'));

    const words = (set: string): readonly string[] =>
      writer === null ? cut(set, 'Letter') : ['--import', stopper, ...writer(join(root, 'fresh'), set)];

    const kill = async (i: number): Promise<Killed> => {
      const start = STARTS[i % 3] as (typeof STARTS)[number];
      const draw = next();
      const moment = draw < 0.6 ? 'at a write' : draw < 0.9 ? 'while writing' : 'at any time';
      const place = join(root, 'place');
      const set = join(place, 'set');
      mkdirSync(place);
      if (start !== 'nothing') cpSync(join(root, 'base'), set, { recursive: true });
      if (start === 'an edited set') for (const file of [EDITED, ADDED]) writeFileSync(join(set, file), EDIT);
      const old = digestOf(set);
      const env =
        moment === 'at a write'
          ? {
              PAN_STOP_AT: String(1 + Math.floor(next() * (start === 'nothing' ? writes / 2 : writes))),
              PAN_STOP_HOW: ['before', 'halfway', 'after'][Math.floor(next() * 3)],
            }
          : {};
      const child = startProgram(words(set), env);
      const end = ended(child);
      if (moment === 'at any time')
        setTimeout(() => child.kill('SIGKILL'), (writer === null ? wholeMs : wholeMs / 10) * next()).unref();
      if (moment === 'while writing') killOnceStaged(child, place, next() * 60);
      const killed = await end;

      const found = digestOf(set);
      const beside = readdirSync(place);
      const aside = beside.find((name) => name.startsWith('.set.old-'));
      const wrong: string[] = [];
      let stands: Killed['end'] = found === wanted ? 'new' : 'mixture';
      if (found === old) stands = 'old';
      else if (found === '' && aside !== undefined && digestOf(join(place, aside)) === old) stands = 'aside';
      if (stands === 'mixture') wrong.push(`neither the old set nor the new one: ${beside.join(', ')}`);
      clearUp(set);
      const after = digestOf(set);
      // Where nothing stood, the next run writes its own set and so shows that the place was free.
      if (stands === 'new' ? after !== wanted : old !== '' && after !== old)
        wrong.push('lost by the next run');
      const hidden = readdirSync(place).filter((name) => name.startsWith('.'));
      if (hidden.length > 0) wrong.push(`left behind: ${hidden.join(', ')}`);
      if (start === 'an edited set' && editsIn(place) !== 2) wrong.push('an edit is lost');
      rmSync(place, { recursive: true });
      const midWrite = killed && (moment === 'at a write' || beside.some((name) => name.startsWith('.')));
      return { start, moment, end: stands, killed, midWrite, wrong: wrong.join('; ') };
    };

    const runs: Killed[] = [];
    for (let i = 0; i < count; i++) {
      const run = await kill(i);
      runs.push(run);
      tell(run, i + 1);
    }
    return runs;
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
};

/** Kills a while after the folder in the making was first seen. */
const killOnceStaged = (child: ChildProcess, place: string, afterMs: number): void => {
  const look = setInterval(() => {
    if (child.exitCode !== null) return clearInterval(look);
    if (!readdirSync(place).some((name) => name.startsWith('.set.new-'))) return;
    clearInterval(look);
    setTimeout(() => child.kill('SIGKILL'), afterMs);
  }, 1);
  child.on('exit', () => clearInterval(look));
};
