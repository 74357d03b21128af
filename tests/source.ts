import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';

/** One import, export-from, dynamic import or import type: what it asks for and where. */
export interface Import {
  readonly file: string;
  readonly from: string;
}

/** A function and the lines it takes, its first and last included. */
export interface FunctionSize {
  readonly file: string;
  readonly line: number;
  readonly lines: number;
  /** Declared, assigned to a name or a method; not a callback on the spot. */
  readonly named: boolean;
}

type Node = Readonly<Record<string, unknown>> & { readonly type: string };

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';

const childrenOf = (node: Node): readonly Node[] => Object.values(node).flat().filter(isNode);

interface Seen {
  readonly node: Node;
  readonly parent: Node | undefined;
}

const walk = (node: Node, parent?: Node): readonly Seen[] => [
  { node, parent },
  ...childrenOf(node).flatMap((child) => walk(child, node)),
];

const nodesOf = (file: string, code: string): readonly Seen[] => {
  const { program, errors } = parseSync(file, code);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`);
  return isNode(program) ? walk(program) : [];
};

/** Every module that the code names, in whatever form, types included. */
export const importsOf = (file: string, code: string): readonly Import[] =>
  nodesOf(file, code).flatMap(({ node }) => {
    const { source } = node;
    if (!isNode(source)) return [];
    return [{ file, from: typeof source['value'] === 'string' ? source['value'] : '(computed)' }];
  });

const NAMING = ['VariableDeclarator', 'MethodDefinition', 'PropertyDefinition', 'Property'];

const isNamed = ({ node, parent }: Seen): boolean =>
  node.type === 'FunctionDeclaration' || NAMING.includes(parent?.type ?? '');

const FUNCTION = /^(Arrow)?Function(Declaration|Expression)?/;

const lineOf = (code: string, offset: unknown): number =>
  code.slice(0, Number(offset)).split('\n').length;

/** The size of every function in the code that has a body. */
export const functionsOf = (file: string, code: string): readonly FunctionSize[] =>
  nodesOf(file, code)
    .filter(({ node }) => FUNCTION.test(node.type) && isNode(node['body']))
    .map((seen) => {
      const line = lineOf(code, seen.node['start']);
      const lines = lineOf(code, seen.node['end']) - line + 1;
      return { file, line, lines, named: isNamed(seen) };
    });

/** Paths below a top folder, with slashes, sorted. */
export const filesBelow = (top: string, name: RegExp): readonly string[] =>
  readdirSync(top, { recursive: true, encoding: 'utf8' })
    .map((path) => join(top, path).replaceAll('\\', '/'))
    .filter((path) => name.test(path))
    .sort();

export const read = (file: string): string => readFileSync(file, 'utf8');
