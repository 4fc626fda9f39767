import { cornerFault, cutShort, FARTHEST, noFacets, stlFault } from './stl-fault.js';
import type { StlForm } from './stl-reader.js';

/** What follows in a facet, word by word; `n` is a number that is passed over and `c` a coordinate. */
const FACET = 'facet normal n n n outer loop vertex c c c vertex c c c vertex c c c endloop endfacet'.split(
  ' ',
);
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const LONGEST_WORD = 60;
const LINE_FEED = 10;
const SPACE = 32;

/** Reads the text form: words parted by white space, and a name to the end of the line after solid and endsolid. */
export const textStl = (size: number): StlForm => {
  let corners = new Float32Array(9 * 64);
  let [filled, line, inSolid, named, step] = [0, 1, false, false, 0];
  let word = '';

  const put = (value: number): void => {
    if (filled === corners.length) {
      // Never more than the file can hold: a facet takes more bytes than this by far.
      const more = new Float32Array(Math.min(2 * corners.length, Math.max(9 * size, corners.length + 9)));
      more.set(corners);
      corners = more;
    }
    corners[filled++] = value;
  };

  const between = (found: string): void => {
    if (!inSolid && found === 'solid') [inSolid, named] = [true, true];
    else if (inSolid && found === 'endsolid') [inSolid, named] = [false, true];
    else if (inSolid && found === 'facet') step = 1;
    else throw wordFault(line, found, inSolid ? 'facet or endsolid' : 'solid');
  };

  const within = (found: string): void => {
    const wanted = FACET[step]!;
    if (wanted === 'c') {
      const value = NUMBER.test(found) ? Number(found) : Number.NaN;
      if (!(Math.abs(value) <= FARTHEST)) throw cornerFault(`line ${line}`, found);
      put(value);
    } else if (wanted !== 'n' && wanted !== found) throw wordFault(line, found, wanted);
    step = (step + 1) % FACET.length;
  };

  const endWord = (): void => {
    const found = word.toLowerCase();
    word = '';
    if (step === 0) between(found);
    else within(found);
  };

  return {
    take: (bytes) => {
      for (const byte of bytes) {
        if (byte > SPACE) {
          if (named) continue;
          if (word.length === LONGEST_WORD) throw wordFault(line, word, 'a word of STL');
          word += String.fromCharCode(byte);
          continue;
        }
        if (word !== '') endWord();
        if (byte !== LINE_FEED) continue;
        line++;
        named = false;
      }
    },
    finish: () => {
      if (word.toLowerCase() === 'endsolid') endWord();
      if (word !== '' || inSolid || step !== 0) throw cutShort(Math.floor(filled / 9), null);
      if (filled === 0) throw noFacets();
      return corners.slice(0, filled);
    },
  };
};

const wordFault = (line: number, found: string, wanted: string) =>
  stlFault(
    `is broken in line ${line}: ${wanted} was expected, and ${JSON.stringify(found.slice(0, 30))} stands there`,
    'Export the scan again, as binary STL if that can be chosen.',
  );
