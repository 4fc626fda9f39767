import { join } from 'node:path';
import type { Disk } from './disk.js';
import { lookAt } from './old-set.js';
import { LIST_NAME } from './set-list.js';

/**
 * Takes away a folder that this program made: the files it wrote, its own list last, then the folders.
 * Files that anyone else put in or changed stay, and so do the folders round them. True when all is gone.
 */
export const removeSet = (disk: Disk, folder: string, was: 'half-made' | 'whole'): boolean => {
  try {
    const standing = lookAt(disk, folder);
    if (standing.state === 'nothing') return true;
    // Without its list nobody can tell whose a whole set's files are.
    if (was === 'whole' && standing.state !== 'ours' && standing.state !== 'empty') return false;
    // In one half made, a listed file that differs is one that was being written.
    const touched = new Set(was === 'whole' && standing.state === 'ours' ? standing.touched : []);
    const kept = clear(disk, folder, '', touched);
    if (disk.kind(join(folder, LIST_NAME)) === 'file') disk.removeFile(join(folder, LIST_NAME));
    if (kept) return false;
    disk.removeFolder(folder);
    return true;
  } catch {
    return false;
  }
};

/**
 * Takes away an earlier set that was moved out. What a person edited or added in it stays, in a folder in
 * plain sight beside the new set.
 *
 * @returns where those files now are, or null when there were none
 */
export const retireSet = (disk: Disk, aside: string, folder: string): string | null => {
  if (removeSet(disk, aside, 'whole')) return null;
  try {
    for (let n = 1; n < 1000; n++) {
      const kept = `${folder}-kept-${n}`;
      if (disk.kind(kept) !== 'nothing') continue;
      disk.rename(aside, kept);
      return kept;
    }
    return aside;
  } catch {
    return aside;
  }
};

/** True when anything had to stay. */
const clear = (disk: Disk, root: string, under: string, touched: ReadonlySet<string>): boolean => {
  let kept = false;
  for (const name of disk.list(join(root, under))) {
    const path = under === '' ? name : `${under}/${name}`;
    if (path === LIST_NAME) continue;
    if (touched.has(path)) kept = true;
    else if (disk.kind(join(root, path)) !== 'folder') disk.removeFile(join(root, path));
    else if (clear(disk, root, path, touched)) kept = true;
    else disk.removeFolder(join(root, path));
  }
  return kept;
};
