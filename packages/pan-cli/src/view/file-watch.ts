import { type FSWatcher, statSync, watch } from 'node:fs';
import { basename, dirname } from 'node:path';

/** Editors write in several steps; the file is read when they have been quiet for so long, ms. */
const QUIET = 120;
/** Some file systems tell nothing; the file is also looked at this often, ms. */
const LOOK = 1000;

const stamp = (path: string): string => {
  try {
    const { mtimeMs, size, ino } = statSync(path);
    return `${mtimeMs} ${size} ${ino}`;
  } catch {
    return 'gone';
  }
};

/**
 * Calls `changed` each time one of the files was written, and gives what stops it. Folders are watched, not files:
 * many editors put a new file in the old one's place.
 */
export const watchFiles = (paths: readonly string[], changed: () => void): (() => void) => {
  const stamps = (): string => paths.map(stamp).join('\n');
  let last = stamps();
  let waiting: NodeJS.Timeout | undefined;
  const look = (): void => {
    const now = stamps();
    if (now === last) return;
    last = now;
    changed();
  };
  const soon = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(look, QUIET);
  };
  const names = new Set(paths.map((path) => basename(path)));
  const watchers: FSWatcher[] = [];
  for (const folder of new Set(paths.map((path) => dirname(path)))) {
    try {
      const watcher = watch(folder, (_, name) => {
        if (name === null || names.has(name)) soon();
      });
      watcher.on('error', () => watcher.close());
      watchers.push(watcher);
    } catch {
      // Without notices from the system the regular look serves.
    }
  }
  const regular = setInterval(soon, LOOK);
  return () => {
    clearTimeout(waiting);
    clearInterval(regular);
    for (const watcher of watchers) watcher.close();
  };
};
