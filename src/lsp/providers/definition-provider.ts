// From a name to where it is declared.

import type { Definition, Location, Position } from 'vscode-languageserver';
import type { Session } from '../session.js';
import type { Declaration, Reference } from '../document-symbols.js';
import type { EstateDocument } from '../document.js';

export function definition(
  session: Session,
  document: EstateDocument,
  position: Position,
): Definition | undefined {
  const symbol = session.symbols().at(document, document.offsetAt(position));
  if (!symbol || symbol.declarations.length === 0) return undefined;
  return symbol.declarations.map(locationOf);
}

export function locationOf(named: Declaration | Reference): Location {
  return { uri: named.document.uri, range: named.document.range(named.start, named.end) };
}
