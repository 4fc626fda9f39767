import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** A source file, its path from the root with forward slashes, and its syntax tree. */
export interface Source {
  readonly path: string;
  readonly text: string;
  readonly tree: ts.SourceFile;
}

export const source = (path: string, text: string): Source => ({
  path,
  text,
  tree: ts.createSourceFile(
    path,
    text,
    ts.ScriptTarget.ES2022,
    true,
    path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  ),
});

const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (entry.name === 'node_modules' || entry.name === 'dist') return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(path) : [path];
  });

export const readSources = (folder: string): readonly Source[] =>
  filesUnder(join(root, folder))
    .filter((path) => /\.tsx?$/.test(path))
    .sort()
    .map((path) => source(relative(root, path).split(sep).join('/'), readFileSync(path, 'utf8')));

export const walk = (node: ts.Node, visit: (one: ts.Node) => void): void => {
  visit(node);
  ts.forEachChild(node, (child) => walk(child, visit));
};

export const nodesOf = (file: Source): readonly ts.Node[] => {
  const found: ts.Node[] = [];
  walk(file.tree, (one) => found.push(one));
  return found;
};

/** The place of a node as path:line. */
export const place = (file: Source, node: ts.Node): string =>
  `${file.path}:${file.tree.getLineAndCharacterOfPosition(node.getStart(file.tree)).line + 1}`;
