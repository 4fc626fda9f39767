import { randomUUID } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  lstatSync,
  openSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { PanError } from 'pan-core';

const refusal = (message: string, advice: string): PanError =>
  new PanError({ code: 'file-write', path: [], message, advice });

/** @throws PanError `file-write` where something stands that may not be replaced. */
export const refuseStandingFile = (file: string, replace: boolean): void => {
  const found = lstatSync(file, { throwIfNoEntry: false });
  if (found === undefined) {
    if (existsSync(dirname(file))) return;
    throw refusal(
      `${file} was not written: the folder ${dirname(file)} does not exist.`,
      'Make it first, or choose another place.',
    );
  }
  if (!found.isFile())
    throw refusal(`${file} is there already and is no plain file.`, 'Choose another name.');
  if (!replace)
    throw refusal(`${file} is there already, and it is kept.`, 'Choose another name, or give --replace.');
};

/** Writes one file whole or not at all; a file that came into being meanwhile is kept. */
export const writeNewFile = (file: string, text: string | Uint8Array, replace: boolean): void => {
  const draft = replace ? join(dirname(file), `.${randomUUID()}.draft`) : file;
  let mine = false;
  try {
    const handle = openSync(draft, 'wx', 0o666);
    mine = true;
    try {
      writeFileSync(handle, text);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    if (replace) renameSync(draft, file);
  } catch (error) {
    if (mine) rmSync(draft, { force: true });
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    if (code === 'EEXIST') refuseStandingFile(file, false);
    throw refusal(
      `${file} was not written: the system said ${code}.`,
      'Choose another place, or free some space.',
    );
  }
};
