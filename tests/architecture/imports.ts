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
