import { drawingOf } from 'pan-cli/read/drawing/read-drawing.js';
import { parseLog } from 'pan-cli/read/log-file.js';
import { readDesign, stlReader } from 'pan-core';
import { stlBytes, type Triangle } from '../scan-of.js';
import { type Judged, judged } from './judged.js';
import { mutatedBytes } from './mutated-bytes.js';
import { type Chance, mutatedText } from './mutated-text.js';

/** Files that lie beside a design or are named by an option. */
export const KINDS = ['dxf', 'csv', 'stl'] as const;
export type FileKind = (typeof KINDS)[number];

const POINTS = `# traced from below
x_mm;y_mm
0;-125
690;-125
690,5;125
0;125
`;
const HOLES = `x (in), y (in), diameter (in)
0.6, 4.5, 0.27
2.95, 4.5, 0.27
5.9, -4.5, 0.27
`;
const LOG = `Some logger, session 3
Time,Long,"Lat"
s,g,g
0.00,0.1,-0.2
0.05,0.3,-0.4
0.10,-1.1,0.8
0.15,-1.0,0.9
`;
const COLUMNS = { time: 'Time', forward: 'Long', left: '-Lat', unit: 1 };

const textStl = (triangles: readonly Triangle[]): string =>
  `solid bar\n${triangles
    .map(
      (t) =>
        `facet normal 0 0 0\nouter loop\n${t.map((p) => `vertex ${p.join(' ')}\n`).join('')}endloop\nendfacet\n`,
    )
    .join('')}endsolid bar\n`;

/** Other figures in some lines that hold nothing but a number: most of these get as far as being drawn. */
const otherFigures = (text: string, next: Chance): string =>
  text
    .split('\n')
    .map((line) => {
      if (!/^\s*-?\d+\.\d+\s*$/.test(line) || next() > 0.05) return line;
      return String((next() - 0.5) * 10 ** (Math.floor(next() * 16) - 6));
    })
    .join('\n');

/** Reads a drawing, and lays it out as the rail that a design names it for. */
const readRail = async (raw: object, name: string, text: string): Promise<void> => {
  const drawing = await drawingOf(name, text);
  readDesign(raw, [], { [name]: drawing });
};

const readScan = (bytes: Uint8Array, piece: number): void => {
  const reader = stlReader(bytes.length);
  for (let at = 0; at < bytes.length; at += piece) reader.take(bytes.subarray(at, at + piece));
  reader.finish();
};

export interface Sources {
  /** A sound DXF of a rail, and the plain data of the design that names it `rail.dxf`. */
  readonly dxf: string;
  readonly design: object;
  readonly triangles: readonly Triangle[];
}

/** Changes a file of a kind by chance, reads it as the program does, and says how that ended. */
export const judgedFile = (
  kind: FileKind,
  { dxf, design, triangles }: Sources,
  next: Chance,
): Promise<Judged> =>
  judged(
    reading(kind, { dxf, design, triangles }, next),
    ({ advice, expected }) => (advice ?? expected ?? '') === '',
  );

const reading = (kind: FileKind, { dxf, design, triangles }: Sources, next: Chance): (() => unknown) => {
  if (kind === 'dxf') {
    const text = next() < 0.5 ? mutatedText(dxf, next) : otherFigures(dxf, next);
    return () => readRail(design, 'rail.dxf', text);
  }
  if (kind === 'csv') {
    const [from, log] = next() < 0.5 ? [LOG, true] : [next() < 0.5 ? POINTS : HOLES, false];
    const text = mutatedText(from, next);
    if (log) return () => parseLog(text, COLUMNS);
    return () => drawingOf('rail.csv', text);
  }
  const whole = next() < 0.6 ? stlBytes(triangles) : new TextEncoder().encode(textStl(triangles));
  const bytes = mutatedBytes(whole, next);
  const piece = next() < 0.2 ? 37 : 1 << 16;
  return () => readScan(bytes, piece);
};
