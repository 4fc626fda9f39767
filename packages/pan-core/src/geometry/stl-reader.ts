import { binaryStl } from './stl-binary.js';
import { stlFault } from './stl-fault.js';
import { textStl } from './stl-text.js';
import { type TriangleSoup, triangleSoup } from './triangle-soup.js';

/** Takes the bytes of an STL file piece by piece, so that a large file is never held as a whole. */
export interface StlReader {
  /** @throws PanError `file-read` at the first thing that cannot be right */
  readonly take: (bytes: Uint8Array) => void;
  /** @throws PanError `file-read` when the file ends too early or holds no facet */
  readonly finish: () => TriangleSoup;
}

/** What reads either form; `corners` is nine numbers per facet. */
export interface StlForm {
  readonly take: (bytes: Uint8Array) => void;
  readonly finish: () => Float32Array;
}

/** Four million facets; a scan with more gains nothing and is better thinned out by the program that made it. */
const LARGEST_BYTES = 200_000_000;
/** A title of 80 bytes and the number of facets, before 50 bytes for each. */
const STL_HEAD = 84;
const STL_FACET = 50;

/**
 * A reader for an STL file of this many bytes, binary or text. Which of the two is told by the size: a binary
 * file has 84 bytes and 50 for each facet that it says it holds (the format as its makers published it in
 * 1989, from memory). Normals and colour bytes are passed over: scanners and exporters fill them as they like.
 *
 * @throws PanError `file-read` when it is empty or larger than 200 MB; nothing is allocated before that
 */
export const stlReader = (size: number): StlReader => {
  if (size > LARGEST_BYTES) {
    throw stlFault(
      `is ${Math.round(size / 1e6)} MB large; at most ${LARGEST_BYTES / 1e6} MB are read`,
      'Thin the scan out, or cut it down to what is near the pan.',
    );
  }
  if (size === 0) throw stlFault('is empty', 'Export the scan again.');
  let form: StlForm | null = null;
  let head = new Uint8Array(0);
  const begin = (bytes: Uint8Array): StlForm => {
    form = formFor(bytes, size);
    form.take(bytes);
    return form;
  };
  return {
    take: (bytes) => {
      if (form !== null) return form.take(bytes);
      const joined = new Uint8Array(head.length + bytes.length);
      joined.set(head);
      joined.set(bytes, head.length);
      head = joined;
      if (head.length >= STL_HEAD) begin(head);
    },
    finish: () => triangleSoup((form ?? begin(head)).finish()),
  };
};

const formFor = (head: Uint8Array, size: number): StlForm => {
  const count =
    head.length < STL_HEAD ? null : new DataView(head.buffer, head.byteOffset).getUint32(STL_HEAD - 4, true);
  if (count !== null && size === STL_HEAD + STL_FACET * count) return binaryStl(count);
  const start = head.subarray(0, STL_HEAD);
  const isText = start.every((byte) => byte >= 32 || (byte >= 9 && byte <= 13));
  if (isText && /^\s*solid/i.test(String.fromCharCode(...start))) return textStl(size);
  if (isText || count === null) {
    throw stlFault('is not an STL file', 'Export it as STL, binary or text.');
  }
  const claimed = STL_HEAD + STL_FACET * count;
  throw stlFault(
    `says that it holds ${count} facets, which take ${claimed} bytes, and is ${size} bytes long`,
    'It was cut short or is no STL file: export or copy it again.',
  );
};
