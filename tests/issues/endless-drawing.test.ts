import { spawnSync } from 'node:child_process';
import { symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readDesignFile } from 'pan-cli/read/index.js';
import { readLogFile } from 'pan-cli/read/log-file.js';
import { PanError } from 'pan-core';
import { expect, test } from 'vitest';
import { changed, exampleText } from '../design-text.js';
import { folderFor } from '../hostile/pan-command.js';

const refusalOf = async (work: () => Promise<unknown>): Promise<string> => {
  try {
    await work();
  } catch (error) {
    if (error instanceof PanError) return error.message;
    throw error;
  }
  throw new Error('nothing was refused');
};

const withDrawing = (name: string): string =>
  changed(exampleText('drawn-rail'), 'outline: rail.dxf', `outline: ${name}`);

// Its size was asked for, which is nought, and then it was read to an end that never comes.
test('a drawing that is a device without end is refused', () =>
  folderFor(async (folder) => {
    symlinkSync('/dev/zero', join(folder, 'endless.dxf'));
    writeFileSync(join(folder, 'pan.yaml'), withDrawing('endless.dxf'));
    expect(await refusalOf(() => readDesignFile(join(folder, 'pan.yaml')))).toContain('no plain file');
  }));

test('a drawing that is a pipe nobody writes to is refused, not waited for', (ctx) =>
  folderFor(async (folder) => {
    if (spawnSync('mkfifo', [join(folder, 'pipe.dxf')]).status !== 0)
      ctx.skip('skipped: this machine has no mkfifo');
    writeFileSync(join(folder, 'pan.yaml'), withDrawing('pipe.dxf'));
    expect(await refusalOf(() => readDesignFile(join(folder, 'pan.yaml')))).toContain('no plain file');
  }));

test('a log without end is refused once it is too long', async () => {
  const columns = { time: 'a', forward: 'b', left: 'c', unit: 1 };
  expect(await refusalOf(() => readLogFile('/dev/zero', columns))).toContain('larger than 100 MB');
});
