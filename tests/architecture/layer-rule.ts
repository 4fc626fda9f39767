import { posix } from 'node:path';
import ts from 'typescript';
import { nodesOf, place, type Source } from './source-tree.js';

export const CORE = 'packages/pan-core/src';

/** Bottom to top; layers of one entry stand side by side and never import each other. */
export const ORDER: readonly (readonly string[])[] = [
  ['errors'],
  ['numeric'],
  ['units'],
  ['geometry'],
  ['design'],
  ['pan'],
  ['oil', 'clearance', 'sheet'],
  ['weld'],
  ['check'],
  ['size'],
  ['drawing'],
];

export const layerOf = (path: string): string | null => {
  const inside = posix.relative(CORE, path);
  return inside.startsWith('..') || !inside.includes('/') ? null : (inside.split('/')[0] as string);
};

const height = (layer: string): number => ORDER.findIndex((side) => side.includes(layer));

export interface Import {
  readonly from: string;
  readonly node: ts.Node;
}

/** Every module a file names: imports, re-exports, `import(…)` and `import('…')` types. */
export const importsOf = (file: Source): readonly Import[] =>
  nodesOf(file).flatMap((node): Import[] => {
    const literal =
      ts.isImportDeclaration(node) || ts.isExportDeclaration(node)
        ? node.moduleSpecifier
        : ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword
          ? node.arguments[0]
          : ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)
            ? node.argument.literal
            : undefined;
    return literal !== undefined && ts.isStringLiteral(literal) ? [{ from: literal.text, node }] : [];
  });

/** Imports of the core that run backwards, sideways, or past another layer's index. */
export const layerFaults = (file: Source): readonly string[] => {
  const own = layerOf(file.path);
  if (own !== null && height(own) < 0) return [`${file.path}: ${own} is no layer`];
  return importsOf(file).flatMap(({ from, node }): string[] => {
    if (!from.startsWith('.')) return [];
    const target = posix.join(posix.dirname(file.path), from);
    const other = layerOf(target);
    const where = `${place(file, node)} imports ${from}`;
    if (other === null) return own === null ? [] : [`${where}: above its own layer's folder`];
    if (other === own) return [];
    if (target !== `${CORE}/${other}/index.js`) return [`${where}: past the index of ${other}`];
    if (own === null) return [];
    if (height(other) < 0) return [`${where}: ${other} is no layer`];
    return height(other) < height(own) ? [] : [`${where}: ${own} may not stand on ${other}`];
  });
};
