import type { Chance } from './mutated-text.js';

const ODD_FLOATS = [Number.NaN, Infinity, -Infinity, 1e30, -1e-40, 3.4e38, 0, -0];
const ODD_COUNTS = [0, 1, 0xffffffff, 0x7fffffff, 1e9];

/** Bytes with a few things changed by chance: bits, numbers, the count of facets, pieces doubled or cut out. */
export const mutatedBytes = (bytes: Uint8Array, next: Chance): Uint8Array => {
  const below = (count: number): number => Math.floor(next() * count);
  const pick = (from: readonly number[]): number => from[below(from.length)] as number;
  let out = bytes.slice();
  const changes = 1 + below(3);
  for (let change = 0; change < changes; change++) {
    const at = below(out.length);
    const length = below(200);
    const four = Math.max(0, Math.min(out.length - 4, 84 + 50 * below(out.length / 50) + 4 * below(12)));
    const view = new DataView(out.buffer);
    const ways: readonly (() => void)[] = [
      () => {
        out[at] = (out[at] ?? 0) ^ (1 << below(8));
      },
      () => out.fill(below(256), at, at + length),
      () => out.length >= 4 && view.setFloat32(four, pick(ODD_FLOATS), true),
      () => out.length >= 84 && view.setUint32(80, pick(ODD_COUNTS), true),
      () => {
        out = out.slice(0, at);
      },
      () => {
        out = Uint8Array.from([...out.subarray(0, at), ...out.subarray(Math.max(0, at - length))]);
      },
      () => {
        out = Uint8Array.from([...out.subarray(0, at), ...out.subarray(at + length)]);
      },
      () => out.copyWithin(at, below(out.length), below(out.length)),
    ];
    ways[below(ways.length)]?.();
  }
  return out;
};
