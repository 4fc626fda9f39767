import ts from 'typescript';
import { nodesOf, place, type Source } from './source-tree.js';

export const LONGEST = 300;

const isDefault = (node: ts.Node): boolean =>
  (ts.isExportAssignment(node) && node.isExportEquals !== true) ||
  (ts.canHaveModifiers(node) &&
    (ts.getModifiers(node) ?? []).some((one) => one.kind === ts.SyntaxKind.DefaultKeyword)) ||
  (ts.isExportSpecifier(node) && node.name.text === 'default');

export const defaultExports = (file: Source): readonly string[] =>
  nodesOf(file)
    .filter(isDefault)
    .map((node) => `${place(file, node)}: default export`);

export const classesBeside =
  (allowed: string) =>
  (file: Source): readonly string[] =>
    nodesOf(file)
      .filter((node) => ts.isClassLike(node) && node.name?.text !== allowed)
      .map((node) => `${place(file, node)}: class`);

export const anyTypes = (file: Source): readonly string[] =>
  nodesOf(file)
    .filter((node) => node.kind === ts.SyntaxKind.AnyKeyword)
    .map((node) => `${place(file, node)}: any`);

export const mutableModuleState = (file: Source): readonly string[] =>
  file.tree.statements
    .filter((node) => ts.isVariableStatement(node) && (node.declarationList.flags & ts.NodeFlags.Const) === 0)
    .map((node) => `${place(file, node)}: a variable that lives as long as the module`);

export const lineCount = (file: Source): number =>
  file.text.split('\n').length - (file.text.endsWith('\n') ? 1 : 0);

export const tooLong = (file: Source): readonly string[] =>
  lineCount(file) > LONGEST ? [`${file.path}: ${lineCount(file)} lines`] : [];

const SILENCED = /@ts-(ignore|nocheck|expect-error)|(biome-)(ignore)|(eslint-)(disable)/;

export const silencedFaults = (file: Source): readonly string[] =>
  file.text
    .split('\n')
    .flatMap((line, i) => (SILENCED.test(line) ? [`${file.path}:${i + 1}: ${line.trim()}`] : []));

const IDLE = /^(skip|todo|only|skipIf|fails|toMatchSnapshot|toMatchInlineSnapshot)$/;

/** Tests that do not run, run alone, or compare with their own past output. */
export const idleTests = (file: Source): readonly string[] =>
  nodesOf(file)
    .filter((node) => ts.isPropertyAccessExpression(node) && IDLE.test(node.name.text))
    .filter((node) => /^(test|it|describe|suite|expect)\b/.test(node.getText(file.tree)))
    .map((node) => `${place(file, node)}: ${node.getText(file.tree)}`);
