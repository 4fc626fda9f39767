import type { Description } from './field/index.js';
import { designDescription } from './key-list.js';

type Json = Readonly<Record<string, unknown>>;

/**
 * JSON Schema (draft 7, which editors' YAML servers read) of a design file, from the same table of keys that
 * reads it. It knows keys, forms and words; ranges, units and shapes are checked on reading.
 */
export const designJsonSchema = (): Json => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Oil pan design',
  ...schemaFor(designDescription()),
});

const schemaFor = (about: Description): Json => {
  const form = formOf(about);
  const description = descriptionOf(about);
  return about.mayBeUnknown ? { description, anyOf: [form, { const: 'unknown' }] } : { description, ...form };
};

const descriptionOf = ({ about, assumed, required }: Description): string => {
  const text = `${about.charAt(0).toUpperCase()}${about.slice(1)}.`;
  if (assumed !== null) return `${text} When left out: ${assumed} (assumed).`;
  return required ? text : `${text} May be left out.`;
};

const formOf = (about: Description): Json => {
  switch (about.form) {
    case 'section':
      return {
        type: 'object',
        additionalProperties: false,
        properties: Object.fromEntries(Object.entries(about.keys).map(([key, of]) => [key, schemaFor(of)])),
        required: Object.keys(about.keys).filter((key) => about.keys[key]?.required),
      };
    case 'list':
      return { type: 'array', items: schemaFor(about.of), minItems: about.fewest, maxItems: about.most };
    case 'tuple':
      return {
        type: 'array',
        items: about.of.map(schemaFor),
        additionalItems: false,
        minItems: about.of.length,
        maxItems: about.of.length,
      };
    case 'either':
      return { anyOf: about.of.map(schemaFor) };
    case 'quantity':
      return { type: ['number', 'string'], pattern: '^\\s*[+-]?[.\\d]' };
    case 'text':
      return { type: ['string', 'number'], minLength: 1, maxLength: about.longest };
    case 'choice':
      return { enum: about.of };
    case 'count':
      return { type: 'integer', minimum: about.from, maximum: about.to };
    case 'number':
      return { type: 'number', minimum: about.from };
    case 'flag':
      return { type: 'boolean' };
    case 'map':
      return { type: 'object', additionalProperties: { type: ['number', 'string'] } };
  }
};
