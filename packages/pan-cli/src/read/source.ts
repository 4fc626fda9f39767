import { open } from 'node:fs/promises';
import { PanError, type Problem } from 'pan-core';

/** No design by hand comes near this; a larger file is some other file. */
export const LARGEST_BYTES = 1_000_000;

const refusal = (path: string, message: string, advice: string): PanError => {
  const problem: Problem = { code: 'file-read', path: [], message: `${path}: ${message}`, advice };
  return new PanError(problem);
};

/**
 * The text of a design file.
 *
 * @throws PanError `file-read` when it is missing, a folder, unreadable, empty, too large, binary or not UTF-8
 */
export const readSource = async (path: string): Promise<string> => {
  const bytes = await readBytes(path);
  if (bytes.length > LARGEST_BYTES) {
    throw refusal(path, `the file is larger than ${LARGEST_BYTES / 1e6} MB.`, 'Give a design file in YAML.');
  }
  if (bytes.includes(0)) throw refusal(path, 'the file is binary, not text.', 'Give a design file in YAML.');
  const text = decode(bytes);
  if (text === null) throw refusal(path, 'the file is not UTF-8 text.', 'Save it as UTF-8.');
  if (text.trim() === '') throw refusal(path, 'the file is empty.', 'Start one with: pan new');
  return text;
};

const readBytes = async (path: string): Promise<Uint8Array> => {
  try {
    const file = await open(path, 'r');
    try {
      const { size } = await file.stat();
      const bytes = new Uint8Array(Math.min(size, LARGEST_BYTES) + 1);
      let length = 0;
      // A pipe or a growing file has no size to trust: read until the end or one byte past the cap.
      const most = LARGEST_BYTES + 1;
      let room = bytes;
      while (length < most) {
        if (length === room.length) {
          const wider = new Uint8Array(Math.min(most, room.length * 2 + 4096));
          wider.set(room);
          room = wider;
        }
        const { bytesRead } = await file.read(room, length, room.length - length);
        if (bytesRead === 0) break;
        length += bytesRead;
      }
      return room.subarray(0, length);
    } finally {
      await file.close();
    }
  } catch (error) {
    throw refusal(path, ...whyUnreadable(error));
  }
};

const whyUnreadable = (error: unknown): [string, string] => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return ['there is no such file.', 'Check the name, or start one with: pan new'];
    case 'EISDIR':
      return ['this is a folder, not a file.', 'Give the design file inside it.'];
    case 'EACCES':
    case 'EPERM':
      return ['the file may not be read.', 'Give yourself permission to read it.'];
    default:
      return [`the file could not be read (${code || 'unknown reason'}).`, 'Check the disk and the path.'];
  }
};

const decode = (bytes: Uint8Array): string | null => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};
