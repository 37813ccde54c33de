// The texts of the estate as the server holds them: what is open in an editor wins over what is on disk.
// A text is parsed when something first asks for its tree, and keeps the tree as long as the text stays the same.

import { EmptyFileSystem, type AstNode, type CstNode } from 'langium';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Position, Range } from 'vscode-languageserver';
import { createTroughlineServices, type TroughlineServices } from '../language/module.js';
import type { EstateFile } from '../language/generated/ast.js';

export interface EstateDocument {
  readonly uri: string;
  readonly text: string;
  /** The editor's version; undefined for a text that is not open. */
  readonly version?: number;
  /** The tree, complete or broken. */
  root(): EstateFile;
  offsetAt(position: Position): number;
  positionAt(offset: number): Position;
  range(start: number, end: number): Range;
}

export function createDocument(uri: string, text: string, version?: number): EstateDocument {
  let lines: TextDocument | undefined;
  let root: EstateFile | undefined;
  const document = (): TextDocument => (lines ??= TextDocument.create(uri, 'troughline', version ?? 0, text));
  return {
    uri,
    text,
    ...(version === undefined ? {} : { version }),
    root: () => (root ??= languageServices().parser.LangiumParser.parse<EstateFile>(text).value),
    offsetAt: (position) => document().offsetAt(position),
    positionAt: (offset) => document().positionAt(offset),
    range: (start, end) => ({ start: document().positionAt(start), end: document().positionAt(end) }),
  };
}

let services: TroughlineServices | undefined;

/** One parser for the whole server; it keeps no state between texts. */
export function languageServices(): TroughlineServices {
  return (services ??= createTroughlineServices(EmptyFileSystem).troughline);
}

/** The tree node's own text range, or undefined for a node that recovery made up. */
export function extentOf(node: AstNode | undefined): { start: number; end: number } | undefined {
  const cst: CstNode | undefined = node?.$cstNode;
  return cst && { start: cst.offset, end: cst.end };
}
