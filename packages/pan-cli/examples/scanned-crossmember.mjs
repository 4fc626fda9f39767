// Writes the invented crossmember of scanned-crossmember.yaml as a scanner would leave it: binary STL, its own axes,
// a hole where nothing was seen, one facet flipped.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Size along, across and up in the scan's own axes, mm; the channel is open below. */
const [LONG, WIDE, TALL] = [800, 94, 113];
const [STEPS, ACROSS] = [20, 4];

const facets = [];
const patch = (at, hole) => {
  for (let i = 0; i < STEPS; i++) {
    for (let j = 0; j < ACROSS; j++) {
      if (hole(i, j)) continue;
      const [a, b, c, d] = [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
      facets.push([a, b, c], [a, c, d]);
    }
  }
};
const along = (i) => (LONG * i) / STEPS;
const none = () => false;
patch(
  (i, j) => [along(i), (WIDE * j) / ACROSS, TALL],
  (i, j) => i === 2 && j === 1,
);
patch((i, j) => [along(i), 0, (TALL * j) / ACROSS], none);
patch((i, j) => [along(i), WIDE, (TALL * j) / ACROSS], none);
facets[7].reverse();

const bytes = Buffer.alloc(84 + 50 * facets.length);
bytes.write('crossmember, invented');
bytes.writeUInt32LE(facets.length, 80);
facets.forEach((facet, f) => {
  facet.flat().forEach((value, k) => {
    bytes.writeFloatLE(value, 84 + 50 * f + 12 + 4 * k);
  });
});
writeFileSync(fileURLToPath(new URL('crossmember.stl', import.meta.url)), bytes);
