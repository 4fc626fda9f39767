import type { Problem } from 'pan-core';
import { isMap, isPair, isScalar, isSeq, type LineCounter, type Scalar } from 'yaml';
import { syntaxProblem } from './syntax-problem.js';

// YAML also reads 012 as 12, 0x10 as 16, and 1e999 and .nan as no number at all.
const PLAIN = /^[+-]?(0|[1-9]\d*|(0|[1-9]\d*)?\.\d+)([eE][+-]?\d+)?$/;

type Ancestors = readonly unknown[];

/** A number that is written in another way than in ordinary figures, with its key; null for any other value. */
export const plainNumberProblem = (
  node: Scalar,
  ancestors: Ancestors,
  lines: LineCounter,
): Problem | null => {
  if (typeof node.value !== 'number') return null;
  const written = node.source ?? '';
  if (Number.isFinite(node.value) && PLAIN.test(written)) return null;
  const path = pathOf(node, ancestors);
  const message = Number.isFinite(node.value)
    ? `${written} is not written in ordinary figures.`
    : `${written} is not a finite number.`;
  const problem = syntaxProblem(
    lines,
    node.range?.[0] ?? 0,
    message,
    'Write the number out, such as 12.5.',
    path,
  );
  return { ...problem, code: 'input-type', expected: 'a number in ordinary figures', found: written };
};

const pathOf = (node: Scalar, ancestors: Ancestors): Problem['path'] => {
  const chain = [...ancestors, node];
  return chain.flatMap((one, i): readonly (string | number)[] => {
    if (isPair(one) && isMap(chain[i - 1])) return isScalar(one.key) ? [String(one.key.value)] : [];
    const next = chain[i + 1];
    return isSeq(one) && next !== undefined ? [one.items.indexOf(next)] : [];
  });
};
