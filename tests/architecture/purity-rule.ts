import { builtinModules } from 'node:module';
import ts from 'typescript';
import { importsOf } from './layer-rule.js';
import { nodesOf, place, type Source } from './source-tree.js';

/** Names that bring in a clock, chance, a place to print, a locale or the machine. */
const WORLD = new Set([
  'Date',
  'console',
  'process',
  'performance',
  'crypto',
  'Intl',
  'require',
  'fetch',
  'setTimeout',
  'setInterval',
  'globalThis',
]);
/** Engines agree on squares and roots alone. */
const SAME_EVERYWHERE = new Set(['2', '0.5']);
const LOCALE = /^(toLocale\w*|localeCompare)$/;

const declared = (file: Source): ReadonlySet<string> => {
  const names = new Set<string>();
  for (const node of nodesOf(file)) {
    const named =
      ts.isVariableDeclaration(node) ||
      ts.isParameter(node) ||
      ts.isBindingElement(node) ||
      ts.isFunctionDeclaration(node) ||
      ts.isImportSpecifier(node);
    if (named && node.name !== undefined && ts.isIdentifier(node.name)) names.add(node.name.text);
  }
  return names;
};

const isKey = (node: ts.Identifier): boolean => {
  const { parent } = node;
  if (ts.isShorthandPropertyAssignment(parent)) return false;
  return 'name' in parent && parent.name === node;
};

/** What a core file must not touch, so that it gives the same answer anywhere. */
export const purityFaults = (file: Source, packages: readonly string[]): readonly string[] => {
  const own = declared(file);
  const faults = importsOf(file).flatMap(({ from, node }): string[] => {
    if (from.startsWith('.')) return [];
    const name = from
      .split('/')
      .slice(0, from.startsWith('@') ? 2 : 1)
      .join('/');
    if (from.startsWith('node:') || builtinModules.includes(name)) return [`${place(file, node)}: ${from}`];
    return packages.includes(name) ? [] : [`${place(file, node)}: ${from} is no stated dependency`];
  });
  for (const node of nodesOf(file)) {
    if (ts.isIdentifier(node) && WORLD.has(node.text) && !isKey(node) && !own.has(node.text)) {
      faults.push(`${place(file, node)}: ${node.text}`);
    }
    if (
      ts.isBinaryExpression(node) &&
      node.operatorToken.kind === ts.SyntaxKind.AsteriskAsteriskToken &&
      !SAME_EVERYWHERE.has(node.right.getText(file.tree))
    ) {
      faults.push(`${place(file, node)}: ** gives other last bits on other engines, power() does not`);
    }
    if (ts.isPropertyAccessExpression(node)) {
      const text = node.getText(file.tree);
      if (text === 'Math.random' || text === 'Math.pow') faults.push(`${place(file, node)}: ${text}`);
      if (LOCALE.test(node.name.text)) faults.push(`${place(file, node)}: ${node.name.text}`);
    }
  }
  return faults;
};
