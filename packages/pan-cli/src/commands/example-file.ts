import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The package's folder of examples, whether this runs from the bundle or from the sources. */
const examplesFolder = (): string => {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'examples', 'demo.yaml')) && dirname(folder) !== folder)
    folder = dirname(folder);
  return join(folder, 'examples');
};

/** An example design as text, under another title when one is given. */
export const exampleText = (name: string, title: string | undefined): string => {
  const text = readFileSync(join(examplesFolder(), `${name}.yaml`), 'utf8');
  return title === undefined ? text : text.replace(/^title:.*$/m, () => `title: ${JSON.stringify(title)}`);
};

/** The JSON Schema that editors read, as text. */
export const schemaText = (): string =>
  readFileSync(join(examplesFolder(), 'pan-design.schema.json'), 'utf8');
