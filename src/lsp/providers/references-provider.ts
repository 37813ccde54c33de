// Everything in the estate that speaks of the thing whose name stands here.

import type { Location, Position } from 'vscode-languageserver';
import type { Session } from '../session.js';
import type { EstateDocument } from '../document.js';
import { locationOf } from './definition-provider.js';

export function references(
  session: Session,
  document: EstateDocument,
  position: Position,
  withDeclaration: boolean,
): Location[] | undefined {
  const names = session.symbols();
  const symbol = names.at(document, document.offsetAt(position));
  if (!symbol) return undefined;
  const references = symbol.declarations
    .flatMap((declaration) => names.referencesTo(declaration))
    // One point out of a numbered row: only its own readings.
    .filter(
      (reference) =>
        !symbol.reference ||
        symbol.declarations.every((declaration) => !declaration.row) ||
        reference.name === symbol.name,
    );
  return [...(withDeclaration ? symbol.declarations : []), ...new Set(references)].map(locationOf);
}
