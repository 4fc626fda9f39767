import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { mutatedBytes } from './mutated-bytes.js';
import { type Chance, mutatedText } from './mutated-text.js';
import { STACK } from './pan-command.js';

/** What is spoiled, and the command that reads it and would write. */
export const RUNS = ['design cut', 'design drawn', 'rail', 'log', 'scan'] as const;

export interface RunEnd {
  readonly code: number | null;
  /** What was wrong with how it ended; empty when nothing was. */
  readonly why: string;
  /** Processor time. */
  readonly ms: number;
  readonly megabytes: number;
}

interface Prepared {
  readonly files: Readonly<Record<string, string | Uint8Array>>;
  readonly words: readonly string[];
}

const LOG = `t,x,y
${Array.from({ length: 60 }, (_, i) => [i / 10, (0.6 * Math.sin(i / 8)).toFixed(3), (0.8 * Math.cos(i / 9)).toFixed(3)].join(',')).join('\n')}
`;

const prepared = (name: (typeof RUNS)[number], examples: string, next: Chance): Prepared => {
  const bytes = (file: string): Uint8Array => readFileSync(join(examples, file));
  const text = (file: string): string => readFileSync(join(examples, file), 'utf8');
  const example = ['demo.yaml', 'two-wings.yaml', 'inches.yaml'][Math.floor(next() * 3)] as string;
  switch (name) {
    case 'design cut':
      return {
        files: { 'pan.yaml': mutatedText(text(example), next) },
        words: ['cut', 'pan.yaml', '--out', 'set'],
      };
    case 'design drawn':
      return {
        files: { 'pan.yaml': mutatedText(text(example), next) },
        words: ['dipstick', 'pan.yaml', '--svg', 'strip.svg'],
      };
    case 'rail':
      return {
        files: {
          'pan.yaml': bytes('drawn-rail.yaml'),
          'rail.dxf': mutatedText(text('rail.dxf'), next),
        },
        words: ['cut', 'pan.yaml', '--out', 'set'],
      };
    case 'log':
      return {
        files: { 'pan.yaml': bytes('demo.yaml'), 'log.csv': mutatedText(LOG, next) },
        words: [
          ...['surge', 'pan.yaml', '--log', 'log.csv', '--time', 't', '--forward', 'x', '--left', 'y'],
          ...['--svg', 'surge.svg'],
        ],
      };
    case 'scan':
      return {
        files: {
          'pan.yaml': bytes('scanned-crossmember.yaml'),
          'crossmember.stl': mutatedBytes(bytes('crossmember.stl'), next),
        },
        words: ['cut', 'pan.yaml', '--out', 'set'],
      };
  }
};

/** Keeps what the process used, on its way out. */
const WATCH = `data:text/javascript,import{writeFileSync}from'node:fs';process.on('exit',()=>{const r=process.resourceUsage();writeFileSync(process.env.PAN_USED,JSON.stringify([r.maxRSS/1024,(r.userCPUTime+r.systemCPUTime)/1000]))})`;

/** Spoils one file by chance, gives it to the program, and says how that ended. */
export const judgedRun = (
  name: (typeof RUNS)[number],
  pan: string,
  examples: string,
  next: Chance,
): RunEnd => {
  const root = mkdtempSync(join(tmpdir(), 'pan-run-'));
  const folder = mkdtempSync(join(root, 'at-'));
  try {
    const { files, words } = prepared(name, examples, next);
    for (const [file, content] of Object.entries(files)) writeFileSync(join(folder, file), content);
    const used = join(root, 'used.json');
    const { status, stdout, stderr, signal } = spawnSync(
      process.execPath,
      ['--import', WATCH, resolve(pan), ...words],
      {
        cwd: folder,
        encoding: 'utf8',
        timeout: 60_000,
        maxBuffer: 1e8,
        env: { PATH: process.env.PATH, PAN_USED: used },
      },
    );
    const left = readdirSync(folder).filter((file) => files[file] === undefined);
    const why = [
      status === null ? `ended by ${signal}` : '',
      status === null || status > 2 ? `exit ${status}: ${stderr.slice(0, 300)}` : '',
      STACK.test(stderr) || STACK.test(stdout) ? `a stack trace: ${stderr.slice(0, 300)}` : '',
      status !== 0 && left.length > 0 && name !== 'log' ? `left ${left.join(', ')}` : '',
      status === 2 && left.length > 0 ? `left ${left.join(', ')} for a file that is wrong` : '',
      status === 2 && !PLACE.test(stderr) ? `no place: ${stderr.slice(0, 300)}` : '',
    ].filter((one) => one !== '');
    const [megabytes, ms] =
      status === null ? [0, 0] : (JSON.parse(readFileSync(used, 'utf8')) as [number, number]);
    return { code: status, why: why.join('; '), ms, megabytes };
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
};

/** File, line and column of a design; of a log, its option and line or column; of a rail or a scan, its name. */
const PLACE = /^pan\.yaml:\d+:\d+: |^--log: .*(line \d+|column)|rail\.dxf|log\.csv|crossmember\.stl/m;
