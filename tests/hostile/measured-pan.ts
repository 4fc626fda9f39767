import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pan, type Ran } from './pan-command.js';

/** What a run of the tool took of the machine: peak memory in MB (10⁶ bytes), processor time and time in seconds. */
export interface Cost {
  readonly peak: number;
  readonly processor: number;
  readonly time: number;
}

/** The most that a run may take before it is ended, s: far more than any should. */
const TOO_LONG = 60;
const BYTES = 1024;

/**
 * Keeps what the system says that a process took, where it is told to. The peak is the process's own (VmHWM, proc(5)):
 * getrusage(2) counts in what its parent held when it was started.
 */
const KEEPER = `import { readFileSync, writeFileSync } from 'node:fs';
process.on('exit', () => {
  const peak = Number(/VmHWM:\\s*(\\d+) kB/.exec(readFileSync('/proc/self/status', 'utf8'))[1]);
  writeFileSync(process.env.PAN_COST, JSON.stringify({ ...process.resourceUsage(), peak }));
});`;

/** Runs the tool as a user does, in a process of its own, and says what it took. */
export const measuredPan = (args: readonly string[], cwd: string): Ran & { readonly cost: Cost } => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-cost-'));
  try {
    const kept = join(folder, 'cost.json');
    const began = performance.now();
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--import', `data:text/javascript,${encodeURIComponent(KEEPER)}`, pan, ...args],
      {
        encoding: 'utf8',
        maxBuffer: 1e8,
        timeout: TOO_LONG * 1000,
        cwd,
        env: { PATH: process.env.PATH, PAN_COST: kept },
      },
    );
    const time = (performance.now() - began) / 1000;
    const used = JSON.parse(readFileSync(kept, 'utf8')) as NodeJS.ResourceUsage & {
      readonly peak: number;
    };
    const cost = {
      peak: (used.peak * BYTES) / 1e6,
      processor: (used.userCPUTime + used.systemCPUTime) / 1e6,
      time,
    };
    return { code: status, out: stdout, err: stderr, cost };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
