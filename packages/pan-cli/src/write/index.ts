export { type Disk, nodeDisk } from './disk.js';
export { holdStop } from './hold-stop.js';
export { refuseStandingFile, writeNewFile } from './new-file.js';
export type { SetFile } from './set-file.js';
export { refuseStandingSet, type Written, writeSet } from './write-set.js';
