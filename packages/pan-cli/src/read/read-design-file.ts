import { dirname } from 'node:path';
import {
  type Beside,
  type Drawings,
  loadUnits,
  missingUnits,
  namedDrawings,
  PanError,
  type ReadDesign,
  readDesign,
  withScans,
} from 'pan-core';
import { type Parsed, parseYaml } from './parse-yaml.js';
import { placed } from './place.js';
import { readScans } from './read-scan.js';
import { readSource } from './source.js';

export interface DesignFile extends ReadDesign {
  readonly path: string;
  /** The file's text as it stands, comments included. */
  readonly text: string;
}

export interface ReadOptions {
  /** Whether scans that the design names are read as well; distances need them, oil does not. */
  readonly scans?: boolean;
  /** Told how much of a scan has been read, 0–1. */
  readonly onScan?: (share: number) => void;
}

/**
 * Reads and checks a design file.
 *
 * @throws PanError `file-read` when the file itself cannot be read, else every problem in it with line and column
 */
export const readDesignFile = async (path: string, options: ReadOptions = {}): Promise<DesignFile> => {
  const text = await readSource(path);
  const parsed = parseYaml(text);
  const read = await readParsed(parsed, path);
  if (options.scans === false) return { path, text, ...read };
  try {
    const soups = await readScans(read.design, dirname(path), options.onScan);
    return { path, text, ...withScans(read, soups) };
  } catch (error) {
    throw error instanceof PanError ? inFile(error, parsed) : error;
  }
};

/** The same for text at hand; drawings that it names are looked for beside `path`, scans stay unread. */
export const readDesignText = async (text: string, path: string | null = null): Promise<ReadDesign> =>
  readParsed(parseYaml(text), path);

const readParsed = async (parsed: Parsed, path: string | null): Promise<ReadDesign> => {
  const drawings = path === null ? {} : await drawingsOf(parsed, path);
  try {
    return readDesign(parsed.raw, [], drawings);
  } catch (error) {
    if (!(error instanceof PanError)) throw error;
    return readAgain(parsed, drawings, error);
  }
};

/** A design file in parts: its text, its plain data, and what it needs besides. */
export interface DesignParts {
  readonly text: string;
  readonly raw: unknown;
  readonly beside: Beside;
}

/** @throws PanError as `readDesignFile` does */
export const designParts = async (path: string): Promise<DesignParts> => {
  const text = await readSource(path);
  const parsed = parseYaml(text);
  const { raw } = parsed;
  const wanted = missingUnits(raw);
  const extra = wanted.length === 0 ? [] : await loadUnits(wanted);
  const drawings = await drawingsOf(parsed, path);
  try {
    const { design } = readDesign(raw, extra, drawings);
    return { text, raw, beside: { extra, drawings, scans: await readScans(design, dirname(path)) } };
  } catch (error) {
    throw error instanceof PanError ? inFile(error, parsed) : error;
  }
};

/** Readers of drawings load only where a design names one. */
const drawingsOf = async (parsed: Parsed, path: string): Promise<Drawings> => {
  const named = namedDrawings(parsed.raw);
  if (named.length === 0) return {};
  const { readDrawings } = await import('./drawing/read-drawing.js');
  try {
    return await readDrawings(named, path);
  } catch (error) {
    throw error instanceof PanError ? inFile(error, parsed) : error;
  }
};

/** A unit outside the common table is worth loading the large one for, and nothing else is. */
const readAgain = async (parsed: Parsed, drawings: Drawings, first: PanError): Promise<ReadDesign> => {
  const wanted = missingUnits(parsed.raw);
  const extra = wanted.length === 0 ? [] : await loadUnits(wanted);
  if (extra.length === 0) throw inFile(first, parsed);
  try {
    return readDesign(parsed.raw, extra, drawings);
  } catch (error) {
    throw error instanceof PanError ? inFile(error, parsed) : error;
  }
};

/** In the order of the file, so that they can be mended from top to bottom. */
const inFile = (error: PanError, parsed: Parsed): PanError =>
  new PanError(
    error.problems
      .map((problem) => placed(problem, parsed))
      .sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0)),
  );
