import { open } from 'node:fs/promises';

const PIECE_BYTES = 1 << 16;

/**
 * The bytes of a file up to a cap and one byte past it: a pipe, a device or a growing file has no size to trust.
 * Throws as node:fs does.
 */
export const cappedBytes = async (path: string, most: number): Promise<Uint8Array> => {
  const file = await open(path, 'r');
  try {
    const pieces: Uint8Array[] = [];
    let length = 0;
    while (length <= most) {
      const piece = new Uint8Array(Math.min(PIECE_BYTES, most + 1 - length));
      const { bytesRead } = await file.read(piece, 0, piece.length);
      if (bytesRead === 0) break;
      pieces.push(piece.subarray(0, bytesRead));
      length += bytesRead;
    }
    return Buffer.concat(pieces, length);
  } finally {
    await file.close();
  }
};
