// Finds every import of a source text (static, type-only, dynamic, re-export) and judges it against the table.

import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import type { Part } from './table.js';

export interface SourceFile {
  /** Relative to src, with forward slashes. */
  readonly file: string;
  readonly text: string;
}

export function sourceFiles(root: string): SourceFile[] {
  return readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .filter((file) => !file.includes(`${path.sep}generated${path.sep}`))
    .map((file) => ({
      file: path.relative(root, file).split(path.sep).join('/'),
      text: readFileSync(file, 'utf8'),
    }));
}

export function importsOf(text: string): string[] {
  return ts.preProcessFile(text, true, false).importedFiles.map((imported) => imported.fileName);
}

/** What is wrong with the imports of one file, in words; empty when all is well. */
export function judge({ file, text }: SourceFile, parts: readonly Part[]): string[] {
  const own = partOf(file, parts);
  if (!own) return [`${file}: its folder is in no part of the table`];
  return importsOf(text).flatMap((name) => {
    if (!name.startsWith('.')) {
      const allowed = own.packages.some((p) =>
        p.endsWith('*') ? name.startsWith(p.slice(0, -1)) : name === p,
      );
      return allowed ? [] : [`${file}: package ${name} is not for ${own.folder}`];
    }
    const target = path.posix.normalize(path.posix.join(path.posix.dirname(file), name));
    const other = partOf(target, parts);
    if (!other) return [`${file}: ${name} leads to no part of the table`];
    if (other === own) return [];
    if (!own.parts.includes(other.folder)) return [`${file}: ${own.folder} may not import ${other.folder}`];
    const inside = target.slice(other.folder.length + 1);
    return inside.includes('/') && !other.deepDoors?.includes(inside)
      ? [`${file}: ${name} reaches past the door of ${other.folder}`]
      : [];
  });
}

function partOf(file: string, parts: readonly Part[]): Part | undefined {
  return parts
    .filter((part) => file.startsWith(`${part.folder}/`))
    .sort((a, b) => b.folder.length - a.folder.length)[0];
}

/** Circles of imports, type-only ones too: the files of each, in order, every circle told once by a shortest way round. */
export function circles(files: readonly SourceFile[]): string[] {
  const known = new Set(files.map(({ file }) => file));
  const edges = new Map(
    files.map(({ file, text }) => [
      file,
      importsOf(text)
        .filter((name) => name.startsWith('.'))
        .map((name) => path.posix.join(path.posix.dirname(file), name).replace(/\.js$/, '.ts'))
        .filter((target) => known.has(target)),
    ]),
  );
  const told = new Set<string>();
  for (const { file } of files) {
    const way = wayBack(file, edges);
    if (!way) continue;
    const first = way.indexOf([...way].sort()[0] ?? file);
    told.add([...way.slice(first), ...way.slice(0, first)].join(' → '));
  }
  return [...told].sort();
}

/** A shortest way from a file back to itself. */
function wayBack(start: string, edges: ReadonlyMap<string, readonly string[]>): string[] | undefined {
  const before = new Map<string, string>();
  const queue = [start];
  for (const at of queue) {
    for (const next of edges.get(at) ?? []) {
      if (next === start) {
        const way = [at];
        for (let back = at; back !== start;) way.unshift((back = before.get(back) ?? start));
        return way;
      }
      if (before.has(next)) continue;
      before.set(next, at);
      queue.push(next);
    }
  }
  return undefined;
}

/** Parts and packages that the table allows and no file of the part imports. */
export function unusedPermissions(files: readonly SourceFile[], parts: readonly Part[]): string[] {
  return parts.flatMap((part) => {
    const own = files.filter(({ file }) => partOf(file, parts) === part);
    const names = own.flatMap(({ file, text }) =>
      importsOf(text).map((name) =>
        name.startsWith('.') ? path.posix.join(path.posix.dirname(file), name) : name,
      ),
    );
    const folders = new Set(names.flatMap((name) => partOf(name, parts)?.folder ?? []));
    const unused = [
      ...part.parts.filter((folder) => !folders.has(folder)),
      ...part.packages.filter(
        (allowed) =>
          !names.some((name) =>
            allowed.endsWith('*') ? name.startsWith(allowed.slice(0, -1)) : name === allowed,
          ),
      ),
    ];
    return unused.map((name) => `${part.folder} may import ${name} and does not`);
  });
}

/** Names of types that more than one file exports, with the files. */
export function sharedTypeNames(files: readonly SourceFile[]): string[] {
  const holders = new Map<string, string[]>();
  for (const { file, text } of files)
    for (const [, name = ''] of text.matchAll(/^export (?:interface|type|class) (\w+)/gm))
      holders.set(name, [...(holders.get(name) ?? []), file]);
  return [...holders].filter(([, of]) => of.length > 1).map(([name, of]) => `${name}: ${of.join(', ')}`);
}

/** How many `!` after an expression a text holds; a type checker is told to look away by each. */
export function nonNullAssertions({ file, text }: SourceFile): number {
  let count = 0;
  const visit = (node: ts.Node): void => {
    if (ts.isNonNullExpression(node)) count++;
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest));
  return count;
}

/** Exported values that no other line of the source names, as `name: file`. */
export function namesNobodyUses(files: readonly SourceFile[]): string[] {
  const said = new Map<string, number>();
  const exported: (readonly [string, string])[] = [];
  for (const { file, text } of files) {
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);
    const visit = (node: ts.Node): void => {
      if (ts.isIdentifier(node)) said.set(node.text, (said.get(node.text) ?? 0) + 1);
      ts.forEachChild(node, visit);
    };
    visit(source);
    for (const statement of source.statements) {
      if (!ts.canHaveModifiers(statement)) continue;
      if (!ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) continue;
      const names = ts.isVariableStatement(statement)
        ? statement.declarationList.declarations.map(({ name }) => name)
        : [(statement as ts.DeclarationStatement).name];
      for (const name of names) if (name && ts.isIdentifier(name)) exported.push([name.text, file]);
    }
  }
  return exported.flatMap(([name, file]) => (said.get(name) === 1 ? [`${name}: ${file}`] : []));
}
