// The other places in this text that speak of the same thing.

import { DocumentHighlightKind, type DocumentHighlight, type Position } from 'vscode-languageserver';
import type { Session } from '../session.js';
import type { EstateDocument } from '../document.js';

export function highlights(
  session: Session,
  document: EstateDocument,
  position: Position,
): DocumentHighlight[] | undefined {
  const names = session.symbols();
  const symbol = names.at(document, document.offsetAt(position));
  if (!symbol) return undefined;
  const declared = symbol.declarations
    .filter((declaration) => declaration.document.uri === document.uri)
    .map(({ start, end }) => ({ range: document.range(start, end), kind: DocumentHighlightKind.Write }));
  const used = names
    .referencesIn(document)
    .filter((reference) => reference.kind === (symbol.reference?.kind ?? symbol.declarations[0]?.kind))
    .filter(
      (reference) =>
        (symbol.reference ? reference.name === symbol.name : true) &&
        names.resolve(reference).some((found) => symbol.declarations.includes(found)),
    )
    .map(({ start, end }) => ({ range: document.range(start, end), kind: DocumentHighlightKind.Read }));
  return [...declared, ...used];
}
