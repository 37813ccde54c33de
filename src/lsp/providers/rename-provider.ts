// Gives a thing another name everywhere in the estate. Refuses, with the reason, a name that the language cannot read,
// that is a keyword, or that something of the same kind already has.

import {
  LSPErrorCodes,
  ResponseError,
  type Position,
  type Range,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Session } from '../session.js';
import type { Declaration } from '../document-symbols.js';
import type { ResolvedSymbol } from '../symbol-index.js';
import { languageServices, type EstateDocument } from '../document.js';
import { workspaceEdit } from '../workspace-edit.js';

export function prepareRename(
  session: Session,
  document: EstateDocument,
  position: Position,
): { range: Range; placeholder: string } {
  const symbol = symbolAt(session, document, position);
  const { start, end } = symbol;
  // In a row of points the number is not the author's: only the letters before it can be changed.
  const own = ownPart(symbol);
  return {
    range: document.range(start, start + own.length),
    placeholder: end - start === own.length ? symbol.name : own,
  };
}

export function rename(
  session: Session,
  document: EstateDocument,
  position: Position,
  newName: string,
): WorkspaceEdit {
  const symbol = symbolAt(session, document, position);
  for (const declaration of symbol.declarations) refuseBadName(session, declaration, newName);
  const edits = new Map<EstateDocument, TextEdit[]>();
  const seen = new Set<string>();
  const replace = (where: EstateDocument, start: number, length: number): void => {
    const key = `${where.uri} ${start}`;
    if (seen.has(key)) return;
    seen.add(key);
    const own = edits.get(where) ?? [];
    edits.set(where, own);
    own.push({ range: where.range(start, start + length), newText: newName });
  };
  for (const declaration of symbol.declarations) {
    replace(declaration.document, declaration.start, declaration.name.length);
    for (const reference of session.symbols().referencesTo(declaration))
      replace(reference.document, reference.start, declaration.name.length);
  }
  return workspaceEdit(session, edits);
}

function symbolAt(session: Session, document: EstateDocument, position: Position): ResolvedSymbol {
  const symbol = session.symbols().at(document, document.offsetAt(position));
  if (!symbol)
    throw refusal(
      'Only names can be renamed: plants, liners, screws, conveyors and their parts, layers, crews, jobs and steps.',
    );
  if (symbol.declarations.length === 0)
    throw refusal(`'${symbol.name}' is not declared anywhere in this estate, so there is nothing to rename.`);
  if (symbol.declarations.length > 1)
    throw refusal(
      `'${symbol.name}' could be any of ${symbol.declarations.length} things here. ` +
        `Say which one is meant first, for example by its plant: Plant.${symbol.name}.`,
    );
  return symbol;
}

function ownPart(symbol: ResolvedSymbol): string {
  const declaration = symbol.declarations[0];
  return declaration?.row ? declaration.name : symbol.name;
}

const identifier = /^[A-Za-z_][A-Za-z0-9_]*(-[A-Za-z0-9_]+)*$/;

function refuseBadName(session: Session, declaration: Declaration, newName: string): void {
  if (!identifier.test(newName)) {
    throw refusal(
      `'${newName}' cannot be a name: use letters, digits, _ and single hyphens between them, and start with a letter.`,
    );
  }
  if (isKeyword(newName)) throw refusal(`'${newName}' is a word of the language and cannot be a name.`);
  if (newName === declaration.name) return;
  const taken = session
    .symbols()
    .declared(declaration.kind)
    .find(
      (other) => other !== declaration && other.name === newName && shareScope(session, declaration, other),
    );
  if (taken)
    throw refusal(
      `There is already a ${taken.kind} called '${newName}'${taken.owner ? ` in ${taken.owner.kind} ${taken.owner.name}` : ''}.`,
    );
}

function shareScope(session: Session, one: Declaration, other: Declaration): boolean {
  if (one.kind === 'conveyor') return session.symbols().plantOf(one) === session.symbols().plantOf(other);
  if (one.kind === 'step') return one.node.$container === other.node.$container;
  return one.owner === other.owner;
}

function isKeyword(name: string): boolean {
  return languageServices().parser.Lexer.tokenize(name).tokens[0]?.tokenType.name !== 'ID';
}

function refusal(reason: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, reason);
}
