// From a name to where it is declared.

import type { Definition, Location, Position } from 'vscode-languageserver';
import type { Desk } from '../desk.js';
import type { Declaration, Use } from '../declared.js';
import type { Text } from '../texts.js';

export function definition(desk: Desk, text: Text, position: Position): Definition | undefined {
  const spoken = desk.names().at(text, text.offsetAt(position));
  if (!spoken || spoken.declarations.length === 0) return undefined;
  return spoken.declarations.map(locationOf);
}

export function locationOf(named: Declaration | Use): Location {
  return { uri: named.text.uri, range: named.text.range(named.start, named.end) };
}
