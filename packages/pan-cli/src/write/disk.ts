import {
  closeSync,
  fstatSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmdirSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';

export type Kind = 'file' | 'folder' | 'other' | 'nothing';

/** The few things a write set asks of a file system; each throws as node:fs does. */
export interface Disk {
  /** What stands at a path, not followed when it is a link. */
  readonly kind: (path: string) => Kind;
  readonly realPath: (path: string) => string;
  readonly list: (folder: string) => readonly string[];
  readonly read: (file: string) => Uint8Array;
  /** Fails when the folder is there already. */
  readonly makeFolder: (folder: string) => void;
  /** Creates a file that must not exist, brings it to the disk and gives the size it has there. */
  readonly create: (file: string, content: Uint8Array) => number;
  readonly rename: (from: string, to: string) => void;
  readonly removeFile: (file: string) => void;
  readonly removeFolder: (folder: string) => void;
  /** Brings a folder's own list of names to the disk, where the system can. */
  readonly settle: (folder: string) => void;
}

export const nodeDisk: Disk = {
  kind: (path) => {
    const found = lstatSync(path, { throwIfNoEntry: false });
    if (found === undefined) return 'nothing';
    return found.isFile() ? 'file' : found.isDirectory() ? 'folder' : 'other';
  },
  realPath: (path) => realpathSync(path),
  list: (folder) => readdirSync(folder).sort(),
  read: (file) => readFileSync(file),
  makeFolder: (folder) => {
    mkdirSync(folder);
  },
  create: (file, content) => {
    const handle = openSync(file, 'wx', 0o666);
    try {
      writeFileSync(handle, content);
      fsyncSync(handle);
      return fstatSync(handle).size;
    } finally {
      closeSync(handle);
    }
  },
  rename: (from, to) => renameSync(from, to),
  removeFile: (file) => unlinkSync(file),
  removeFolder: (folder) => rmdirSync(folder),
  settle: (folder) => {
    // A folder cannot be opened for this on every system, and a name that is lost with the power is then
    // the system's choice.
    let handle: number;
    try {
      handle = openSync(folder, 'r');
    } catch {
      return;
    }
    try {
      fsyncSync(handle);
    } catch {
      return;
    } finally {
      closeSync(handle);
    }
  },
};
