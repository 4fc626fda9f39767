import { lstatSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { writeNewFile } from '../write/index.js';
import { schemaText } from './example-file.js';

/** Name under which a starter's first line looks for the editors' schema: beside itself, so that it works offline. */
export const SCHEMA_FILE = 'pan-design.schema.json';

/**
 * Writes a design and, where the folder has none, the schema its first line names: both or neither. A schema that
 * is there already stays.
 *
 * @returns the schema's path
 */
export const writeWithSchema = (file: string, text: string, replace: boolean): string => {
  const schema = join(dirname(file), SCHEMA_FILE);
  const fresh = lstatSync(schema, { throwIfNoEntry: false }) === undefined;
  if (fresh) writeNewFile(schema, schemaText(), false);
  try {
    writeNewFile(file, text, replace);
  } catch (error) {
    if (fresh) rmSync(schema, { force: true });
    throw error;
  }
  return schema;
};
