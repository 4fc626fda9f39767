import type { SetFile } from './set-file.js';
import { refusal } from './write-problem.js';

// Letters, digits, points and hyphens: nothing that any system reads as more than a name.
const NAME = /^[a-z0-9][a-z0-9.-]*$/;
const DEVICE = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])(\.|$)/;
const LONGEST = 100;

/**
 * Refuses a file whose place in the set could lead out of it, hide another or mean a device.
 *
 * @throws PanError `file-write`
 */
export const checkPlaces = (files: readonly SetFile[]): void => {
  const seen = new Set<string>();
  const folders = new Set<string>();
  for (const { path } of files) {
    const parts = path.split('/');
    const good = parts.every(
      (part) => NAME.test(part) && !part.endsWith('.') && !DEVICE.test(part) && part.length <= LONGEST,
    );
    if (!good || seen.has(path)) {
      throw refusal(
        `The set would hold a file named "${path}", which is not safe on every system.`,
        'Please report this with the design file that caused it.',
      );
    }
    seen.add(path);
    parts.slice(0, -1).forEach((_, i) => {
      folders.add(parts.slice(0, i + 1).join('/'));
    });
  }
  for (const folder of folders) {
    if (seen.has(folder))
      throw refusal(`The set would hold "${folder}" as a file and as a folder.`, 'Please report this.');
  }
};

/** Every folder that the files need, outer before inner. */
export const foldersOf = (paths: readonly string[]): readonly string[] => {
  const folders = new Set<string>();
  for (const path of paths) {
    const parts = path.split('/').slice(0, -1);
    parts.forEach((_, i) => {
      folders.add(parts.slice(0, i + 1).join('/'));
    });
  }
  return [...folders].sort();
};
