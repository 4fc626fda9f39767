import { join } from 'node:path';
import type { Disk } from './disk.js';
import { digest, LIST_NAME, readList } from './set-list.js';

/** What stands where a set is to go. */
export type Standing =
  | { readonly state: 'nothing' | 'empty' | 'foreign' | 'not a folder' }
  | { readonly state: 'ours'; readonly files: readonly string[]; readonly touched: readonly string[] };

/**
 * Compares a folder with the list it was written with. `touched` names every file that was edited, put
 * in, or turned into something else; a file that was taken away is no loss and is not named.
 */
export const lookAt = (disk: Disk, folder: string): Standing => {
  const kind = disk.kind(folder);
  if (kind === 'nothing') return { state: 'nothing' };
  if (kind !== 'folder') return { state: 'not a folder' };
  const found = walk(disk, folder, '');
  if (found.length === 0) return { state: disk.list(folder).length === 0 ? 'empty' : 'foreign' };
  const listFile = join(folder, LIST_NAME);
  if (disk.kind(listFile) !== 'file') return { state: 'foreign' };
  const list = readList(Buffer.from(disk.read(listFile)).toString('utf8'));
  if (list === null) return { state: 'foreign' };
  const known = new Map(list.map((file) => [file.path, file]));
  const touched: string[] = [];
  for (const path of found) {
    if (path === LIST_NAME) continue;
    const listed = known.get(path);
    const at = join(folder, path);
    if (listed === undefined || disk.kind(at) !== 'file' || digest(disk.read(at)) !== listed.sha256) {
      touched.push(path);
    }
  }
  return { state: 'ours', files: found, touched };
};

/** Everything under a folder that is not itself a folder; links are not followed. */
const walk = (disk: Disk, root: string, under: string): string[] =>
  disk.list(join(root, under)).flatMap((name) => {
    const path = under === '' ? name : `${under}/${name}`;
    return disk.kind(join(root, path)) === 'folder' ? walk(disk, root, path) : [path];
  });
