// The other places in this text that speak of the same thing.

import { DocumentHighlightKind, type DocumentHighlight, type Position } from 'vscode-languageserver';
import type { Desk } from '../desk.js';
import type { Text } from '../texts.js';

export function highlights(desk: Desk, text: Text, position: Position): DocumentHighlight[] | undefined {
  const names = desk.names();
  const spoken = names.at(text, text.offsetAt(position));
  if (!spoken) return undefined;
  const declared = spoken.declarations
    .filter((declaration) => declaration.text.uri === text.uri)
    .map(({ start, end }) => ({ range: text.range(start, end), kind: DocumentHighlightKind.Write }));
  const used = names
    .usesIn(text)
    .filter((use) => use.kind === (spoken.use?.kind ?? spoken.declarations[0]?.kind))
    .filter(
      (use) =>
        (spoken.use ? use.name === spoken.name : true) &&
        names.resolve(use).some((found) => spoken.declarations.includes(found)),
    )
    .map(({ start, end }) => ({ range: text.range(start, end), kind: DocumentHighlightKind.Read }));
  return [...declared, ...used];
}
