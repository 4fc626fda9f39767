/** A file of a set, by its place under the set's folder with forward slashes. */
export interface SetFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

export const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === 'string' ? new TextEncoder().encode(content) : content;
