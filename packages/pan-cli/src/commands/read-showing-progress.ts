import { type DesignFile, readDesignFile } from '../read/index.js';
import { createProgress } from '../terminal/progress.js';
import type { Screen } from './command.js';

/** Reads a design with its scans; a large one shows how far it has come. */
export const readShowingProgress = async (path: string, screen: Screen): Promise<DesignFile> => {
  const progress = createProgress(screen.tell, process.stderr.isTTY === true);
  try {
    return await readDesignFile(path, { onScan: progress.show });
  } finally {
    progress.clear();
  }
};
