import { PanError } from 'pan-core';

/** A drawing that cannot be read: `file.dxf, line 12: …`; the key that names it is put on later. */
export const drawingRefusal = (says: string, advice: string, line: number | null = null): PanError =>
  new PanError({
    code: 'file-read',
    path: [],
    message: line === null ? says : `line ${line}: ${says}`,
    advice,
  });
