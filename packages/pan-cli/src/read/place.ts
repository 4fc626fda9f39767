import type { Problem } from 'pan-core';
import { isMap, isNode, isScalar, type Node } from 'yaml';
import type { Parsed } from './parse-yaml.js';

type Path = readonly (string | number)[];

/** Where a path of the design stands in the file: its value, else the key, else the nearest thing above it. */
export const placeOf = (
  path: Path,
  { document, lines }: Parsed,
): { readonly line: number; readonly column: number } => {
  const { line, col } = lines.linePos(offsetOf(path, document));
  return { line: Math.max(line, 1), column: Math.max(col, 1) };
};

const offsetOf = (path: Path, document: Parsed['document']): number => {
  for (let length = path.length; length >= 0; length--) {
    const here = path.slice(0, length);
    const node: unknown = length === 0 ? document.contents : document.getIn(here, true);
    if (!isNode(node) || !node.range) continue;
    // An unknown key is best shown at the key; so is an empty value, which has no place of its own.
    const key = keyNode(here, document);
    return startOf(node, key);
  }
  return 0;
};

const startOf = (node: Node, key: Node | null): number => {
  const empty = isScalar(node) && node.value === null && (node.source ?? '') === '';
  return (empty ? key?.range?.[0] : undefined) ?? node.range?.[0] ?? 0;
};

const keyNode = (path: Path, document: Parsed['document']): Node | null => {
  const last = path.at(-1);
  const parent: unknown = path.length <= 1 ? document.contents : document.getIn(path.slice(0, -1), true);
  if (!isMap(parent)) return null;
  const pair = parent.items.find(({ key }) => isScalar(key) && key.value === last);
  return isNode(pair?.key) ? pair.key : null;
};

/** A problem with its line and column. */
export const placed = (problem: Problem, parsed: Parsed): Problem => {
  const key = problem.code === 'input-key' ? keyNode(problem.path, parsed.document) : null;
  if (key?.range == null) return { ...problem, ...placeOf(problem.path, parsed) };
  const { line, col } = parsed.lines.linePos(key.range[0]);
  return { ...problem, line, column: col };
};
