import { basename, dirname, join } from 'node:path';
import type { Disk } from './disk.js';
import { removeSet, retireSet } from './remove-set.js';

/** Names beside a set while it is being written: the new one in the making, the old one moved out. */
export const sideNames = (folder: string): { readonly staging: string; readonly aside: string } => {
  const beside = (what: string): string =>
    join(dirname(folder), `.${basename(folder)}.${what}-${process.pid}`);
  return { staging: beside('new'), aside: beside('old') };
};

/**
 * Clears up after a run that was killed: an old set that was moved out comes back when nothing took its
 * place, and half-made new ones go. A run that still lives is left alone.
 */
export const clearLeftovers = (disk: Disk, parent: string, name: string): void => {
  for (const found of disk.list(parent)) {
    for (const what of ['old', 'new'] as const) {
      const pid = processOf(found, `.${name}.${what}-`);
      if (pid === null || lives(pid)) continue;
      const at = join(parent, found);
      const folder = join(parent, name);
      if (what === 'new') removeSet(disk, at, 'half-made');
      else if (disk.kind(folder) === 'nothing') disk.rename(at, folder);
      else retireSet(disk, at, folder);
    }
  }
};

const processOf = (found: string, start: string): number | null => {
  const rest = found.startsWith(start) ? found.slice(start.length) : '';
  return /^[0-9]+$/.test(rest) ? Number(rest) : null;
};

const lives = (pid: number): boolean => {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // No permission to signal it means that it is there.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
};
