import { PanError } from '../../errors/index.js';
import { cross3, length3, subtract3, type Vec3 } from '../../numeric/index.js';
import type { Mesh } from './mesh.js';

// Binary STL: a header of 80 bytes, a count of 4, and 50 bytes a triangle (normal, three corners, two
// bytes of nothing), little-endian.
const HEADER = 80;
const START = 84;
const TRIANGLE = 50;

/**
 * A mesh as the bytes of a binary STL file, in mm.
 *
 * @param name what the solid is; plain letters, cut to the header's 80 bytes
 */
export const writeStl = (mesh: Mesh, name: string): Uint8Array => {
  const bytes = new Uint8Array(START + TRIANGLE * mesh.triangles.length);
  const view = new DataView(bytes.buffer);
  // Some readers take a file that begins with "solid" for the text form.
  const title = `pan: ${name.replace(/[^\x20-\x7e]/g, '?')}, mm`.slice(0, HEADER);
  for (let i = 0; i < title.length; i++) bytes[i] = title.charCodeAt(i);
  view.setUint32(HEADER, mesh.triangles.length, true);
  mesh.triangles.forEach((triangle, n) => {
    const corners = triangle.map((place) => mesh.points[place] as Vec3);
    const rows = [normalOf(corners), ...corners];
    rows.forEach((row, r) => {
      row.forEach((value, c) => {
        view.setFloat32(START + TRIANGLE * n + 12 * r + 4 * c, value, true);
      });
    });
  });
  return bytes;
};

const normalOf = (corners: readonly Vec3[]): Vec3 => {
  const [a, b, c] = corners as [Vec3, Vec3, Vec3];
  const n = cross3(subtract3(b, a), subtract3(c, a));
  const length = length3(n);
  return length > 0 ? [n[0] / length, n[1] / length, n[2] / length] : [0, 0, 0];
};

/**
 * The triangles of a binary STL file, nine numbers each.
 *
 * @throws PanError `file-read` when the size does not fit the count, or a number is not finite
 */
export const readStl = (bytes: Uint8Array): Float32Array => {
  const refuse = (message: string): PanError =>
    new PanError({ code: 'file-read', path: [], message, advice: 'Save it again as a binary STL file.' });
  if (bytes.length < START)
    throw refuse(`The file has ${bytes.length} bytes; a binary STL file has at least ${START}.`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const count = view.getUint32(HEADER, true);
  if (START + TRIANGLE * count !== bytes.length) {
    throw refuse(
      `The file says ${count} triangles, which take ${START + TRIANGLE * count} bytes, and has ${bytes.length}.`,
    );
  }
  const out = new Float32Array(9 * count);
  for (let n = 0; n < count; n++) {
    for (let v = 0; v < 9; v++) {
      const value = view.getFloat32(START + TRIANGLE * n + 12 + 4 * v, true);
      if (!Number.isFinite(value)) throw refuse(`Triangle ${n + 1} has a corner that is not a number.`);
      out[9 * n + v] = value;
    }
  }
  return out;
};
