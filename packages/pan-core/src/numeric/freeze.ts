/** Freezes a plain result and everything in it; typed arrays stay writable, as the language demands. */
export const freeze = <T>(value: T): T => {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value) || ArrayBuffer.isView(value)) {
    return value;
  }
  Object.freeze(value);
  for (const part of Object.values(value)) freeze(part);
  return value;
};
