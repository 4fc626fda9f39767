import { PanError } from '../errors/index.js';

/** A coordinate beyond this is a slip of a program, in whatever unit: ten kilometres in mm. */
export const FARTHEST = 1e7;

export const stlFault = (says: string, advice: string): PanError =>
  new PanError({ code: 'file-read', path: [], message: `The scan ${says}.`, advice });

export const noFacets = (): PanError => stlFault('holds no facet', 'Export the scan again.');

export const cutShort = (found: number, wanted: number | null): PanError =>
  stlFault(
    `ends after ${found}${wanted === null ? '' : ` of ${wanted}`} whole facets`,
    'It was cut short: export or copy it again.',
  );

export const cornerFault = (where: string, found: string): PanError =>
  stlFault(
    `has a corner in ${where} that cannot be: ${found}`,
    'A coordinate is a number up to ten million: export the scan again.',
  );
