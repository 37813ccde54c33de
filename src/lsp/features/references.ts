// Everything in the estate that speaks of the thing whose name stands here.

import type { Location, Position } from 'vscode-languageserver';
import type { Desk } from '../desk.js';
import type { Text } from '../texts.js';
import { locationOf } from './definition.js';

export function references(
  desk: Desk,
  text: Text,
  position: Position,
  withDeclaration: boolean,
): Location[] | undefined {
  const names = desk.names();
  const spoken = names.at(text, text.offsetAt(position));
  if (!spoken) return undefined;
  const uses = spoken.declarations
    .flatMap((declaration) => names.usesOf(declaration))
    // One point out of a numbered row: only its own readings.
    .filter(
      (use) =>
        !spoken.use ||
        spoken.declarations.every((declaration) => !declaration.row) ||
        use.name === spoken.name,
    );
  return [...(withDeclaration ? spoken.declarations : []), ...new Set(uses)].map(locationOf);
}
