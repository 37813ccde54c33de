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
import type { Desk } from '../desk.js';
import type { Declaration } from '../declared.js';
import type { Spoken } from '../names.js';
import { languageServices, type Text } from '../texts.js';

export function prepareRename(
  desk: Desk,
  text: Text,
  position: Position,
): { range: Range; placeholder: string } {
  const spoken = spokenAt(desk, text, position);
  const { start, end } = spoken;
  // In a row of points the number is not the author's: only the letters before it can be changed.
  const own = ownPart(spoken);
  return {
    range: text.range(start, start + own.length),
    placeholder: end - start === own.length ? spoken.name : own,
  };
}

export function rename(desk: Desk, text: Text, position: Position, newName: string): WorkspaceEdit {
  const spoken = spokenAt(desk, text, position);
  for (const declaration of spoken.declarations) refuseBadName(desk, declaration, newName);
  const changes: Record<string, TextEdit[]> = {};
  const seen = new Set<string>();
  const replace = (where: Text, start: number, length: number): void => {
    const key = `${where.uri} ${start}`;
    if (seen.has(key)) return;
    seen.add(key);
    (changes[where.uri] ??= []).push({ range: where.range(start, start + length), newText: newName });
  };
  for (const declaration of spoken.declarations) {
    replace(declaration.text, declaration.start, declaration.name.length);
    for (const use of desk.names().usesOf(declaration)) replace(use.text, use.start, declaration.name.length);
  }
  return { changes };
}

function spokenAt(desk: Desk, text: Text, position: Position): Spoken {
  const spoken = desk.names().at(text, text.offsetAt(position));
  if (!spoken)
    throw refusal(
      'Only names can be renamed: plants, liners, screws, conveyors and their parts, layers, crews, jobs and steps.',
    );
  if (spoken.declarations.length === 0)
    throw refusal(`'${spoken.name}' is not declared anywhere in this estate, so there is nothing to rename.`);
  if (spoken.declarations.length > 1)
    throw refusal(
      `'${spoken.name}' could be any of ${spoken.declarations.length} things here. Say which one is meant first, for example by its plant: Plant.${spoken.name}.`,
    );
  return spoken;
}

function ownPart(spoken: Spoken): string {
  const declaration = spoken.declarations[0];
  return declaration?.row ? declaration.name : spoken.name;
}

const identifier = /^[A-Za-z_][A-Za-z0-9_]*(-[A-Za-z0-9_]+)*$/;

function refuseBadName(desk: Desk, declaration: Declaration, newName: string): void {
  if (!identifier.test(newName)) {
    throw refusal(
      `'${newName}' cannot be a name: use letters, digits, _ and single hyphens between them, and start with a letter.`,
    );
  }
  if (isKeyword(newName)) throw refusal(`'${newName}' is a word of the language and cannot be a name.`);
  if (newName === declaration.name) return;
  const taken = desk
    .names()
    .declared(declaration.kind)
    .find((other) => other !== declaration && other.name === newName && shareScope(desk, declaration, other));
  if (taken)
    throw refusal(
      `There is already a ${taken.kind} called '${newName}'${taken.owner ? ` in ${taken.owner.kind} ${taken.owner.name}` : ''}.`,
    );
}

function shareScope(desk: Desk, one: Declaration, other: Declaration): boolean {
  if (one.kind === 'conveyor') return desk.names().plantOf(one) === desk.names().plantOf(other);
  if (one.kind === 'step') return one.node.$container === other.node.$container;
  return one.owner === other.owner;
}

function isKeyword(name: string): boolean {
  return languageServices().parser.Lexer.tokenize(name).tokens[0]?.tokenType.name !== 'ID';
}

function refusal(reason: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, reason);
}
