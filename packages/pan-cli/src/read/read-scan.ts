import { open, stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type Design, namedScans, PanError, type Problem, stlReader, type TriangleSoup } from 'pan-core';

/** Read at once; the file is never held as a whole. */
const PIECE_BYTES = 1 << 20;

/**
 * The scans that a design names, by name; each file once. Names are as seen from the design's folder.
 *
 * @throws PanError `file-read` for every scan that cannot be read, each at its name in the design
 */
export const readScans = async (
  design: Design,
  folder: string,
  onShare?: (share: number) => void,
): Promise<ReadonlyMap<string, TriangleSoup>> => {
  const soups = new Map<string, TriangleSoup>();
  const problems: Problem[] = [];
  for (const { file, path } of namedScans(design)) {
    if (soups.has(file)) continue;
    try {
      soups.set(file, await readScan(resolve(folder, file), onShare));
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
      problems.push(...error.problems.map((p) => ({ ...p, path, found: file })));
    }
  }
  if (problems.length > 0) throw new PanError(problems);
  return soups;
};

/**
 * The triangles of an STL file, read piece by piece.
 *
 * @param onShare told how much of the file has been read, 0–1
 * @throws PanError `file-read` when it cannot be read or is no sound STL file
 */
export const readScan = async (
  path: string,
  onShare: (share: number) => void = () => undefined,
): Promise<TriangleSoup> => {
  const size = await sizeOf(path);
  const reader = stlReader(size);
  const file = await open(path, 'r').catch((error: unknown) => {
    throw unreadable(error);
  });
  try {
    const room = new Uint8Array(PIECE_BYTES);
    for (let done = 0; done < size; ) {
      const { bytesRead } = await file.read(room, 0, Math.min(PIECE_BYTES, size - done), done);
      if (bytesRead === 0) break;
      reader.take(room.subarray(0, bytesRead));
      done += bytesRead;
      onShare(done / size);
    }
    return reader.finish();
  } finally {
    await file.close();
  }
};

/** Asked before the file is opened: opening a pipe that nobody writes to would wait for ever. */
const sizeOf = async (path: string): Promise<number> => {
  const found = await stat(path).catch((error: unknown) => {
    throw unreadable(error);
  });
  if (found.isDirectory()) throw refusal('is a folder, not a file', 'Name the STL file inside it.');
  // The size decides what is allocated, and only a plain file has one to trust.
  if (!found.isFile()) throw refusal('is no plain file', 'Save the scan to a file and name that.');
  return found.size;
};

const unreadable = (error: unknown): PanError => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
  return code === 'ENOENT' || code === 'ENOTDIR'
    ? refusal('is not there', 'Its name is as seen from the folder of the design file.')
    : refusal(`could not be read (${code})`, 'Check the name, the permission and the disk.');
};

const refusal = (says: string, advice: string): PanError =>
  new PanError({ code: 'file-read', path: [], message: `The scan ${says}.`, advice });
