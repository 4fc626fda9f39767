/** A place in a design file, from its top. */
export type KeyPath = readonly (string | number)[];

/** A value to write at a place of a design file, as the file spells it. */
export interface Edit {
  readonly path: KeyPath;
  readonly value: string | number | readonly unknown[] | Readonly<Record<string, unknown>>;
}

const isList = (data: unknown): data is readonly unknown[] => Array.isArray(data);
const isKeys = (data: unknown): data is Readonly<Record<string, unknown>> =>
  typeof data === 'object' && data !== null && !isList(data);

/** What stands at a place, or undefined. */
export const valueAt = (data: unknown, path: KeyPath): unknown =>
  path.reduce<unknown>((at, key) => {
    if (isList(at)) return typeof key === 'number' ? at[key] : undefined;
    return isKeys(at) && Object.hasOwn(at, key) ? at[key] : undefined;
  }, data);

/** The same data with one place written anew; what is not on the way to it is shared, not copied. */
const withValue = (data: unknown, path: KeyPath, value: unknown): unknown => {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (isList(data) && typeof key === 'number') {
    const copy = [...data];
    copy[key] = withValue(data[key], rest, value);
    return copy;
  }
  const keys = isKeys(data) ? data : {};
  return { ...keys, [key]: withValue(keys[key], rest, value) };
};

/** The same plain data with some places written anew; the data given is left as it was. */
export const withEdits = (data: unknown, edits: readonly Edit[]): unknown =>
  edits.reduce<unknown>((at, { path, value }) => withValue(at, path, value), data);
