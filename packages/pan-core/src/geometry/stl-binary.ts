import { cornerFault, cutShort, FARTHEST, noFacets } from './stl-fault.js';
import type { StlForm } from './stl-reader.js';

const HEAD = 84;
const FACET = 50;
/** Bytes of the normal, before the corners. */
const NORMAL = 12;

/** Reads the binary form; the file is known to be as long as `count` facets make it. */
export const binaryStl = (count: number): StlForm => {
  if (count === 0) throw noFacets();
  const corners = new Float32Array(9 * count);
  let [skip, facet] = [HEAD, 0];
  const rest = new Uint8Array(FACET);
  let kept = 0;
  const read = (view: DataView, at: number): void => {
    for (let k = 0; k < 9; k++) {
      const value = view.getFloat32(at + NORMAL + 4 * k, true);
      if (!(Math.abs(value) <= FARTHEST)) throw cornerFault(`facet ${facet + 1}`, String(value));
      corners[9 * facet + k] = value;
    }
    facet++;
  };
  return {
    take: (bytes) => {
      let at = Math.min(skip, bytes.length);
      skip -= at;
      if (kept > 0) {
        const more = bytes.subarray(at, at + FACET - kept);
        rest.set(more, kept);
        kept += more.length;
        at += more.length;
        if (kept < FACET) return;
        if (facet < count) read(new DataView(rest.buffer), 0);
        kept = 0;
      }
      const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
      for (; at + FACET <= bytes.length && facet < count; at += FACET) read(view, at);
      if (facet < count) {
        rest.set(bytes.subarray(at));
        kept = bytes.length - at;
      }
    },
    finish: () => {
      if (facet < count) throw cutShort(facet, count);
      return corners;
    },
  };
};
