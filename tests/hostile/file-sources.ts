import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { boxTriangles } from '../scan-of.js';
import type { Sources } from './mutated-file.js';

/** Sound files for a test to spoil, from the folder of examples. */
export const fileSources = (examples: string): Sources => ({
  dxf: readFileSync(`${examples}/rail.dxf`, 'utf8'),
  design: parse(readFileSync(`${examples}/drawn-rail.yaml`, 'utf8')) as object,
  triangles: [
    ...boxTriangles([400, -300, -200], [480, 300, -120]),
    ...boxTriangles([100, -30, -90], [140, 30, -50]),
  ],
});
