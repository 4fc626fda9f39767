import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Ajv from 'ajv';
import { keyPage } from 'pan-cli/read/key-page.js';
import { parseYaml } from 'pan-cli/read/parse-yaml.js';
import { designJsonSchema } from 'pan-core';
import { describe, expect, it } from 'vitest';

import { changed, exampleText, SMALLEST } from '../design-text.js';
import slips from '../exact/design-slips.json' with { type: 'json' };

/** The schema as an editor uses it: an independent validator, strict about the schema itself. */
const validate = new Ajv({ strict: true, strictTuples: false, allowUnionTypes: true }).compile(
  designJsonSchema(),
);

const faults = (text: string): readonly string[] => {
  validate(parseYaml(text).raw);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
};

const shipped = (path: string): string =>
  readFileSync(fileURLToPath(new URL(`../../packages/pan-cli/${path}`, import.meta.url)), 'utf8');

describe('the JSON Schema for editors', () => {
  it.each(['demo', 'two-wings', 'two-piece', 'inches', 'drawn-rail', 'scanned-crossmember', 'windage-tray'])(
    'accepts the example %s',
    (name) => {
      expect(faults(exampleText(name))).toEqual([]);
    },
  );

  it('accepts the smallest design and the word unknown where it may stand', () => {
    expect(faults(SMALLEST)).toEqual([]);
    expect(faults(`${SMALLEST}chassis: {axes: unknown, ground: unknown}\n`)).toEqual([]);
    expect(faults(changed(SMALLEST, '{at: [140, 0]}', '{at: [140, 0], gap: unknown}'))).not.toEqual([]);
  });

  // Keys, words, forms and missing keys are an editor's business; ranges, units and shapes are not.
  const byEditor = slips.filter(
    ({ code, says, to }) =>
      (code === 'input-key' && says.includes('not a key')) ||
      (code === 'input-type' && /^cannot be|not a list|neither true/.test(says) && !to.includes('gap')),
  );
  it.each(byEditor)('refuses $to', ({ from, to }) => {
    expect(faults(changed(exampleText('demo'), from, to))).not.toEqual([]);
  });

  it('is the one that ships beside the examples, and so is the page of keys', () => {
    expect(JSON.parse(shipped('examples/pan-design.schema.json'))).toEqual(
      JSON.parse(JSON.stringify(designJsonSchema())),
    );
    expect(shipped('docs/design-keys.md')).toBe(keyPage());
  });
});
