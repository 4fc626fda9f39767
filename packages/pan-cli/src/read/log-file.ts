import { type LoadLog, PanError } from 'pan-core';
import { cappedBytes } from './capped-bytes.js';

/** Which columns of a log to read; a name behind a minus sign is read the other way round. */
export interface LogColumns {
  readonly time: string;
  readonly forward: string;
  readonly left: string;
  /** What 1 in the file is in g. */
  readonly unit: number;
}

const LARGEST_BYTES = 100_000_000;
/** Lines before the columns' names, and between them and the first number, that are passed over. */
const MOST_PREAMBLE = 100;
const MOST_NOTES = 3;

const refusal = (message: string, advice: string, found?: string): PanError =>
  new PanError({ code: 'input-option', path: [], message: `--log: ${message}`, advice, found });

/**
 * Acceleration against time from a logger's text export: columns by name, separated by commas, semicolons or
 * tabs, whatever stands above them left out.
 *
 * @throws PanError `input-option` naming the line that cannot be read
 */
export const readLogFile = async (path: string, columns: LogColumns): Promise<LoadLog> =>
  parseLog(await textOf(path), columns);

const textOf = async (path: string): Promise<string> => {
  try {
    const bytes = await cappedBytes(path, LARGEST_BYTES);
    if (bytes.length <= LARGEST_BYTES) return new TextDecoder('utf-8').decode(bytes);
  } catch {
    throw refusal(`${path} could not be read.`, 'Check the name of the log file.');
  }
  throw refusal(
    `${path} is larger than ${LARGEST_BYTES / 1e6} MB.`,
    'Cut out the laps that matter, or log slower.',
  );
};

/** The same for text at hand. */
export const parseLog = (text: string, columns: LogColumns): LoadLog => {
  const lines = text.split(/\r\n|\n|\r/);
  const { line: head, separator, places } = findHead(lines, columns);
  const [time, forward, left]: [number[], number[], number[]] = [[], [], []];
  let notes = 0;
  for (let i = head + 1; i < lines.length; i++) {
    const line = lines[i] as string;
    if (line.trim() === '') continue;
    const cells = cellsOf(line, separator);
    const [t, f, l] = places.map((place) => number(cells[place], separator)) as [number, number, number];
    if (![t, f, l].every(Number.isFinite)) {
      // Loggers write units under the names.
      if (time.length === 0 && notes++ < MOST_NOTES) continue;
      throw refusal(
        `line ${i + 1} has no number for each of time, forward and left.`,
        'Mend or take out that line.',
        line.slice(0, 60),
      );
    }
    const before = time[time.length - 1];
    if (before !== undefined && !(t > before)) {
      throw refusal(
        `line ${i + 1}: time ${t} s does not come after ${before} s.`,
        'Sort the log by time and take doubles out.',
      );
    }
    time.push(t);
    forward.push(sign(columns.forward) * f * columns.unit);
    left.push(sign(columns.left) * l * columns.unit);
  }
  if (time.length < 2) throw refusal('it holds fewer than two samples.', 'Give a longer log.');
  return { time, forward, left };
};

const sign = (name: string): number => (name.startsWith('-') ? -1 : 1);
const bare = (name: string): string => name.replace(/^-/, '').trim().toLowerCase();

interface Head {
  readonly line: number;
  readonly separator: string;
  readonly places: readonly number[];
}

const findHead = (lines: readonly string[], { time, forward, left }: LogColumns): Head => {
  const wanted = [time, forward, left].map(bare);
  let nearest: { readonly names: readonly string[]; readonly missing: readonly string[] } | null = null;
  for (let line = 0; line < Math.min(lines.length, MOST_PREAMBLE); line++) {
    for (const separator of ['\t', ';', ',']) {
      const names = cellsOf(lines[line] as string, separator);
      const lower = names.map((name) => name.trim().toLowerCase());
      const places = wanted.map((name) => lower.indexOf(name));
      if (places.every((place) => place >= 0)) return { line, separator, places };
      const missing = wanted.filter((_, k) => places[k] === -1);
      if (names.length > 1 && (nearest === null || missing.length < nearest.missing.length))
        nearest = { names, missing };
    }
  }
  const known = nearest?.missing.length === wanted.length ? [] : (nearest?.missing ?? []);
  throw refusal(
    known.length === 0
      ? `no line names the columns ${[time, forward, left].join(', ')}.`
      : `there is no column ${known.join(', ')}.`,
    'Name the columns as the file does: --time, --forward and --left.',
    nearest?.names.join(', ').slice(0, 200),
  );
};

/** The cells of a line; quotes hold separators together. */
const cellsOf = (line: string, separator: string): readonly string[] => {
  if (!line.includes('"')) return line.split(separator);
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (const letter of line) {
    if (letter === '"') quoted = !quoted;
    else if (letter === separator && !quoted) {
      cells.push(cell);
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell];
};

/** A decimal comma is one where commas do not separate. */
const number = (cell: string | undefined, separator: string): number => {
  const text = (cell ?? '').trim();
  const plain = separator === ',' ? text : text.replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain) ? Number(plain) : Number.NaN;
};
