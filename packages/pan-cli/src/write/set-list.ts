import { createHash } from 'node:crypto';
import { bytesOf, type SetFile } from './set-file.js';

/** Hidden in the set: what was written, so that a later run knows what a person has changed since. */
export const LIST_NAME = '.pan-set.json';

export interface ListedFile {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}

export const digest = (content: Uint8Array): string => createHash('sha256').update(content).digest('hex');

export const listText = (files: readonly SetFile[]): string => {
  const rows = files.map(({ path, content }): ListedFile => {
    const bytes = bytesOf(content);
    return { path, bytes: bytes.length, sha256: digest(bytes) };
  });
  return `${JSON.stringify({ format: 1, files: rows }, null, 1)}\n`;
};

/** The files a list names, or null when it is no list of ours. */
export const readList = (text: string): readonly ListedFile[] | null => {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof data !== 'object' || data === null || !('format' in data) || data.format !== 1) return null;
  if (!('files' in data) || !Array.isArray(data.files)) return null;
  const rows: readonly unknown[] = data.files;
  const files = rows.filter(isListed);
  return files.length === rows.length ? files : null;
};

const isListed = (row: unknown): row is ListedFile =>
  typeof row === 'object' &&
  row !== null &&
  'path' in row &&
  typeof row.path === 'string' &&
  'bytes' in row &&
  typeof row.bytes === 'number' &&
  'sha256' in row &&
  typeof row.sha256 === 'string';
