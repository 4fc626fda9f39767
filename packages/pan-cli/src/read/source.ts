import { PanError } from 'pan-core';
import { cappedBytes } from './capped-bytes.js';

/** No design by hand comes near this; a larger file is some other file. */
const LARGEST_BYTES = 2_000_000;

interface Place {
  readonly line: number;
  readonly column: number;
}

const refusal = (message: string, advice: string, place?: Place): PanError =>
  new PanError({ code: 'file-read', path: [], message, advice, ...place });

/**
 * The text of a design file.
 *
 * @throws PanError `file-read` when it is missing, a folder, unreadable, empty, too large, binary or not UTF-8
 */
export const readSource = async (path: string): Promise<string> => {
  const bytes = await readBytes(path);
  if (bytes.length > LARGEST_BYTES) {
    throw refusal(`The file is larger than ${LARGEST_BYTES / 1e6} MB.`, 'Give a design file in YAML.');
  }
  const control = bytes.findIndex(isControl);
  if (control >= 0) {
    throw refusal('The file is binary, not text.', 'Give a design file in YAML.', placeOf(bytes, control));
  }
  const text = decode(bytes);
  if (text === null) {
    throw refusal('The file is not UTF-8 text.', 'Save it as UTF-8.', placeOf(bytes, firstUndecoded(bytes)));
  }
  if (text.trim() === '') throw refusal('The file is empty.', 'Start one with: pan new');
  return text;
};

// Tab, line feed and carriage return are the only control characters a text has.
const isControl = (byte: number): boolean => byte < 32 && byte !== 9 && byte !== 10 && byte !== 13;

const LINE_FEED = 10;

/** Line and column of a byte, from 1. */
const placeOf = (bytes: Uint8Array, at: number): Place => {
  const before = bytes.subarray(0, at);
  const column = at - before.lastIndexOf(LINE_FEED);
  return { line: 1 + before.reduce((lines, byte) => lines + (byte === LINE_FEED ? 1 : 0), 0), column };
};

/** Where the first line begins that is no UTF-8: no character goes over the end of a line. */
const firstUndecoded = (bytes: Uint8Array): number => {
  let from = 0;
  for (let end = bytes.indexOf(LINE_FEED); end >= 0; end = bytes.indexOf(LINE_FEED, from)) {
    if (decode(bytes.subarray(from, end)) === null) return from;
    from = end + 1;
  }
  return from;
};

const readBytes = async (path: string): Promise<Uint8Array> => {
  try {
    return await cappedBytes(path, LARGEST_BYTES);
  } catch (error) {
    throw refusal(...whyUnreadable(error));
  }
};

const whyUnreadable = (error: unknown): [string, string] => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return ['There is no such file.', 'Check the name, or start one with: pan new'];
    case 'EISDIR':
      return ['This is a folder, not a file.', 'Give the design file inside it.'];
    case 'EACCES':
    case 'EPERM':
      return ['The file may not be read.', 'Give yourself permission to read it.'];
    default:
      return [`The file could not be read (${code || 'unknown reason'}).`, 'Check the disk and the path.'];
  }
};

const decode = (bytes: Uint8Array): string | null => {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
};
