import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Ran } from './pan-command.js';

const LAP = `Time,Long,Lat
${Array.from({ length: 40 }, (_, i) => [i / 10, (0.5 * Math.sin(i / 8)).toFixed(3), (0.6 * Math.cos(i / 9)).toFixed(3)].join(',')).join('\n')}
`;

/**
 * What the examples of the help take for granted: a design, a log, a drawing with a layer CUT, and `pan` by its name.
 *
 * @param cli The folder of the package `pan-cli`.
 */
export const furnish = (folder: string, cli: string): void => {
  const example = (name: string): string => join(cli, 'examples', name);
  writeFileSync(join(folder, 'my-pan.yaml'), readFileSync(example('two-wings.yaml')));
  writeFileSync(join(folder, 'lap.csv'), LAP);
  const drawing = readFileSync(example('rail.dxf'), 'utf8');
  writeFileSync(join(folder, 'bracket.dxf'), drawing.replaceAll(/^RAIL$/gm, 'CUT'));
  const programs = join(folder, 'programs');
  mkdirSync(programs);
  mkdirSync(join(folder, '.zfunc'));
  writeFileSync(
    join(programs, 'pan'),
    `#!/bin/sh\nexec '${process.execPath}' '${resolve(cli, 'dist/pan.js')}' "$@"\n`,
  );
  chmodSync(join(programs, 'pan'), 0o755);
};

/** An example of the help typed into a shell as it stands, in a furnished folder that is home as well. */
export const typed = (line: string, folder: string): Ran => {
  const { status, stdout, stderr } = spawnSync('bash', ['--noprofile', '--norc', '-c', line], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 1e8,
    // Where a page is served until somebody ends it, this does.
    timeout: line.startsWith('pan view') ? 3000 : 300_000,
    killSignal: 'SIGINT',
    input: '',
    env: { PATH: `${join(folder, 'programs')}:${process.env.PATH}`, HOME: folder },
  });
  return { code: status, out: stdout, err: stderr };
};
