import { stat } from 'node:fs/promises';
import { dirname, extname, isAbsolute, join } from 'node:path';
import { type Drawing, type Drawings, type NamedDrawing, PanError } from 'pan-core';
import { cappedBytes } from '../capped-bytes.js';
import { csvDrawing } from './csv-drawing.js';
import { drawingRefusal } from './drawing-problem.js';
import { dxfCurves } from './dxf-curves.js';
import { parseDxf } from './dxf-parse.js';
import { screenDxf } from './dxf-screen.js';
import { dxfTags } from './dxf-tags.js';

const LARGEST_BYTES = 20_000_000;

/** A drawing from the text of its file. */
export const drawingOf = async (name: string, text: string): Promise<Drawing> => {
  switch (extname(name).toLowerCase()) {
    case '.csv':
    case '.txt':
      return csvDrawing(text);
    case '.dxf': {
      const screened = screenDxf(dxfTags(text));
      const { curves, passedOver } = dxfCurves(await parseDxf(screened));
      if (curves.length === 0)
        throw drawingRefusal(
          'Nothing that makes an outline is drawn in it.',
          'Draw lines, arcs, polylines or splines.',
        );
      return {
        unit: screened.unit,
        curves,
        passedOver: [...screened.passedOver, ...passedOver],
        words: screened.words,
      };
    }
    default:
      throw drawingRefusal('It is neither .dxf nor .csv.', 'Save the drawing as a DXF, or points as a CSV.');
  }
};

/**
 * Every drawing that a design names, read from beside it.
 *
 * @throws PanError `file-read`, each problem with the key that names the drawing
 */
export const readDrawings = async (named: readonly NamedDrawing[], beside: string): Promise<Drawings> => {
  const drawings: Record<string, Drawing> = {};
  for (const { path, name } of named) {
    if (Object.hasOwn(drawings, name)) continue;
    try {
      const file = isAbsolute(name) ? name : join(dirname(beside), name);
      drawings[name] = await drawingOf(name, await textOf(file));
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
      throw new PanError(error.problems.map((one) => ({ ...one, path, message: `${name}: ${one.message}` })));
    }
  }
  return drawings;
};

const textOf = async (file: string): Promise<string> => {
  let bytes: Uint8Array;
  try {
    // Asked before the file is opened: opening a pipe that nobody writes to would wait for ever.
    if (!(await stat(file)).isFile())
      throw drawingRefusal('It is no plain file.', 'Save the drawing to a file and name that.');
    bytes = await cappedBytes(file, LARGEST_BYTES);
    if (bytes.length > LARGEST_BYTES)
      throw drawingRefusal(`It is larger than ${LARGEST_BYTES / 1e6} MB.`, 'Keep only the rail in it.');
  } catch (error) {
    if (error instanceof PanError) throw error;
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
    throw code === 'ENOENT'
      ? drawingRefusal('There is no such file.', 'Put the drawing beside the design file, or mend its name.')
      : drawingRefusal(`It could not be read (${code}).`, 'Check the name and its permissions.');
  }
  return new TextDecoder('utf-8').decode(bytes);
};
