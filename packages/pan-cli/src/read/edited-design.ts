import { type Edit, PanError } from 'pan-core';
import { isNode } from 'yaml';
import { parseYaml } from './parse-yaml.js';

/** A value as YAML writes it on one line; JSON is YAML too, and a plain text needs no quotes. */
const spelt = (value: Edit['value']): string =>
  typeof value === 'string' && /^[\w][\w .%/-]*$/.test(value) ? value : JSON.stringify(value);

/**
 * A design file's text with some of its values written anew: everything else stands as it stood, to the space.
 *
 * @throws PanError `internal` where a place that is to change is not in the file
 */
export const editedDesign = (text: string, edits: readonly Edit[]): string => {
  const { document } = parseYaml(text);
  const places = edits.map(({ path, value }) => {
    const node = document.getIn(path, true);
    const range = isNode(node) ? node.range : null;
    if (range == null) {
      throw new PanError({
        code: 'internal',
        path,
        message: `The file has no ${path.join('.')} to write anew.`,
      });
    }
    const [from, to] = range;
    // A list in lines of its own ends with the line break before the next key.
    const kept = /\s*$/.exec(text.slice(from, to))?.[0] ?? '';
    return { from, to: to - kept.length, put: spelt(value) };
  });
  return places
    .sort((a, b) => b.from - a.from)
    .reduce((at, { from, to, put }) => at.slice(0, from) + put + at.slice(to), text);
};
