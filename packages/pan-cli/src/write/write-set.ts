import { basename, dirname, join, resolve } from 'node:path';
import { type Disk, nodeDisk } from './disk.js';
import { lookAt, type Standing } from './old-set.js';
import { removeSet, retireSet } from './remove-set.js';
import { bytesOf, type SetFile } from './set-file.js';
import { LIST_NAME, listText } from './set-list.js';
import { checkPlaces, foldersOf } from './set-path.js';
import { clearLeftovers, sideNames } from './side-folder.js';
import { editedRefusal, refusal, writeProblem } from './write-problem.js';

export interface Written {
  readonly folder: string;
  readonly files: number;
  readonly bytes: number;
  /** An earlier set stood there and was taken away. */
  readonly replaced: boolean;
  /** Where files of the earlier set that were edited or added now are; null when there were none. */
  readonly keptAt: string | null;
}

/**
 * Writes a set of files as one folder, whole or not at all. Everything is made in a folder beside the
 * target and takes its place by one rename; `manifest.json` is written last. An earlier set is replaced
 * only when asked, and what was edited or added in it is kept in a folder beside the new one. A folder
 * that holds no set of this program's is never replaced.
 *
 * @throws PanError `file-write` or `file-edited`; what stood at the target then still stands there.
 */
export const writeSet = (
  target: string,
  files: readonly SetFile[],
  replace: boolean,
  disk: Disk = nodeDisk,
): Written => {
  checkPlaces(files);
  const asked = resolve(target);
  try {
    const folder = freePlace(disk, asked, replace);
    const { staging, aside } = sideNames(folder);
    const bytes = stage(disk, staging, files);
    return { ...takePlace(disk, staging, folder, aside, replace), files: files.length, bytes };
  } catch (error) {
    throw writeProblem(error, asked);
  }
};

/**
 * Says at once what `writeSet` would refuse after a long reckoning: something stands at the target that may not be
 * replaced.
 *
 * @throws PanError `file-write` or `file-edited`.
 */
export const refuseStandingSet = (target: string, replace: boolean, disk: Disk = nodeDisk): void => {
  const asked = resolve(target);
  try {
    freePlace(disk, asked, replace);
  } catch (error) {
    throw writeProblem(error, asked);
  }
};

/** The folder that a set may be put at, tidied of what a stopped run left beside it. */
const freePlace = (disk: Disk, asked: string, replace: boolean): string => {
  const parent = disk.realPath(dirname(asked));
  const folder = join(parent, basename(asked));
  if (basename(asked) === '') throw refusal('The top of the disk cannot be a set.', 'Choose another --out.');
  clearLeftovers(disk, parent, basename(asked));
  refuseStanding(lookAt(disk, folder), folder, replace);
  return folder;
};

const refuseStanding = (standing: Standing, folder: string, replace: boolean): void => {
  switch (standing.state) {
    case 'nothing':
    case 'empty':
      return;
    case 'not a folder':
      throw refusal(`${folder} is not a folder.`, 'Choose another --out.');
    case 'foreign':
      throw editedRefusal(
        `${folder} holds files that this program did not write, and they are kept.`,
        folder,
        'Choose another --out, or an empty folder.',
      );
    case 'ours': {
      if (replace) return;
      if (standing.touched.length === 0) {
        throw refusal(
          `${folder} already holds a set.`,
          'Give --replace to replace it, or choose another --out.',
        );
      }
      const shown = standing.touched.slice(0, 10).join(', ');
      const more = standing.touched.length > 10 ? ` and ${standing.touched.length - 10} more` : '';
      throw editedRefusal(
        `${folder} holds a set with files edited or added since it was written: ${shown}${more}.`,
        shown,
        'Choose another --out, or give --replace: those files are then kept in a folder beside the new set.',
      );
    }
  }
};

const stage = (disk: Disk, staging: string, files: readonly SetFile[]): number => {
  const last = files.filter((file) => file.path === 'manifest.json');
  const rest = files.filter((file) => file.path !== 'manifest.json');
  const ordered = [...rest, { path: LIST_NAME, content: listText(files) }, ...last];
  disk.makeFolder(staging);
  try {
    const folders = foldersOf(files.map((file) => file.path));
    for (const folder of folders) disk.makeFolder(join(staging, folder));
    let bytes = 0;
    for (const { path, content } of ordered) {
      const wanted = bytesOf(content);
      const size = disk.create(join(staging, path), wanted);
      if (size !== wanted.length) {
        throw refusal(
          `Only ${size} of ${wanted.length} bytes of ${path} reached the disk.`,
          'Free some space or choose another --out.',
        );
      }
      bytes += size;
    }
    for (const folder of ['', ...folders]) disk.settle(join(staging, folder));
    return bytes;
  } catch (error) {
    removeSet(disk, staging, 'half-made');
    throw error;
  }
};

/** Puts the staged folder in the target's place; puts the earlier one back when that fails. */
const takePlace = (
  disk: Disk,
  staging: string,
  folder: string,
  aside: string,
  replace: boolean,
): Pick<Written, 'folder' | 'replaced' | 'keptAt'> => {
  let movedAside = false;
  try {
    // Looked at again: a person may have saved a file while the set was being written.
    const standing = lookAt(disk, folder);
    refuseStanding(standing, folder, replace);
    if (standing.state === 'ours') {
      disk.rename(folder, aside);
      movedAside = true;
    } else if (standing.state === 'empty') disk.removeFolder(folder);
    disk.rename(staging, folder);
  } catch (error) {
    removeSet(disk, staging, 'half-made');
    if (movedAside) putBack(disk, aside, folder);
    throw error;
  }
  disk.settle(dirname(folder));
  const keptAt = movedAside ? retireSet(disk, aside, folder) : null;
  return { folder, replaced: movedAside, keptAt };
};

const putBack = (disk: Disk, aside: string, folder: string): void => {
  try {
    disk.rename(aside, folder);
  } catch {
    throw refusal(
      `The new set could not be put in place, and the earlier one now lies at ${aside}.`,
      `Rename that folder back to ${folder}; the next run does so too.`,
    );
  }
};
