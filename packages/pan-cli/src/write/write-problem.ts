import { PanError } from 'pan-core';

const WHY: Readonly<Record<string, readonly [what: string, advice: string]>> = {
  ENOSPC: ['the disk is full', 'Free some space or choose another --out.'],
  EDQUOT: ['your share of the disk is used up', 'Free some space or choose another --out.'],
  EROFS: ['the disk is read-only', 'Choose another --out.'],
  EACCES: ['you may not write there', 'Choose another --out or change the folder’s permissions.'],
  EPERM: ['you may not write there', 'Choose another --out or change the folder’s permissions.'],
  ENAMETOOLONG: ['the name is too long', 'Choose a shorter --out.'],
  ENOENT: ['the folder it should go into does not exist', 'Make that folder first or choose another --out.'],
  ENOTDIR: ['part of the path is a file, not a folder', 'Choose another --out.'],
  ELOOP: ['the path goes round in links', 'Choose another --out.'],
  EIO: ['the disk failed', 'Choose another --out on another disk.'],
  EMFILE: ['too many files are open', 'Close some programs and try again.'],
  ERR_INVALID_ARG_VALUE: ['the name holds a character that no file can have', 'Choose another --out.'],
  EBUSY: ['another program is using the folder', 'Close it there and try again.'],
};

/** Says in plain words why a set could not be written; one of ours passes through. */
export const writeProblem = (error: unknown, target: string): PanError => {
  if (error instanceof PanError) return error;
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const [what, advice] = (Object.hasOwn(WHY, code) ? WHY[code] : undefined) ?? [
    `the system said ${code === '' ? String(error) : code}`,
    'Try another --out.',
  ];
  return refusal(`Nothing was written to ${target}: ${what}.`, advice);
};

export const refusal = (message: string, advice: string): PanError =>
  new PanError({ code: 'file-write', path: [], message, advice });

export const editedRefusal = (message: string, found: string, advice: string): PanError =>
  new PanError({ code: 'file-edited', path: [], message, found, advice });
