import { type Path, type PathBox, polylinePath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';

/** Sheets of paper as printers hold them, mm: ISO 216, and the US letter size. */
export const PAPERS = Object.freeze({
  a4: Object.freeze([210, 297] as const),
  letter: Object.freeze([215.9, 279.4] as const),
});

/** A size of paper. */
export type Paper = keyof typeof PAPERS;

/**
 * Lines by what they mean: `cut` an edge to cut, `fold` a narrow continuous bend line, `crease` the same
 * broken, `mark` a line to scribe, `thin` dimensions and leaders, `frame` borders, `faint` helps that must not
 * be taken for the part, `trim` where paper is cut.
 */
export type Pen = 'cut' | 'fold' | 'crease' | 'mark' | 'thin' | 'frame' | 'faint' | 'trim';

/** A drawn line of a page. */
export interface Stroke {
  readonly kind: 'stroke';
  readonly path: Path;
  readonly pen: Pen;
}

/** A filled outline of a page. */
export interface Fill {
  readonly kind: 'fill';
  readonly path: Path;
  readonly shade: 'ink' | 'grey' | 'pale' | 'paper';
}

/** A text of a page. */
export interface Words {
  readonly kind: 'words';
  /** On the base line, at the left end, the middle or the right end of the words. */
  readonly at: Vec2;
  /** Height of a line's letter body, mm. */
  readonly size: number;
  readonly text: string;
  /** Radians, counter-clockwise. */
  readonly turned?: number;
  readonly align?: 'left' | 'centre' | 'right';
  readonly bold?: boolean;
  /** Room for the words, mm: longer ones are pressed together. */
  readonly room?: number;
}

/** Only what lies inside the box is drawn. */
export interface Clip {
  readonly kind: 'clip';
  readonly box: PathBox;
  readonly items: readonly PageItem[];
}

/** One thing drawn on a page. */
export type PageItem = Stroke | Fill | Words | Clip;

/** A sheet of paper: mm, origin in its lower left corner, y up; items are drawn in order. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly items: readonly PageItem[];
}

/** Pages that belong together, by file name. */
export interface PageSet {
  readonly title: string;
  readonly pages: readonly Page[];
}

/** Turns pages into the bytes of a file that prints them true to size. */
export type PagePrinter = (set: PageSet) => Promise<Uint8Array>;

/** Width over body height of the pages' letters on the wide side of their mean, for breaking lines. */
export const LETTER_WIDTH = 0.46;

export const stroke = (pen: Pen, path: Path): Stroke => ({ kind: 'stroke', path, pen });

export const line = (pen: Pen, ...points: readonly Vec2[]): Stroke =>
  stroke(pen, polylinePath(points, false));

export const boxPath = ({ min, max }: PathBox): Path =>
  polylinePath([min, [max[0], min[1]], max, [min[0], max[1]]], true);

export const words = (at: Vec2, size: number, text: string, more: Partial<Words> = {}): Words => ({
  kind: 'words',
  at,
  size,
  text,
  ...more,
});
