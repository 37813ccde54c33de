// Colours by meaning: what a name stands for, declared or used. An editor that has no colouring grammar of its own also gets
// keywords, numbers and texts.

import { CstUtils } from 'langium';
import {
  SemanticTokensBuilder,
  type Range,
  type SemanticTokens,
  type SemanticTokensLegend,
} from 'vscode-languageserver';
import type { Session } from '../session.js';
import type { NameKind } from '../document-symbols.js';
import type { EstateDocument } from '../document.js';
import { describe } from '../cursor.js';

export const legend: SemanticTokensLegend = {
  tokenTypes: [
    'keyword',
    'string',
    'number',
    'comment',
    'namespace',
    'class',
    'type',
    'variable',
    'property',
    'enumMember',
    'event',
    'function',
  ],
  tokenModifiers: ['declaration', 'readonly'],
};

const typeOf: Readonly<Record<NameKind, string>> = {
  plant: 'namespace',
  liner: 'class',
  screw: 'class',
  conveyor: 'type',
  job: 'function',
  outage: 'event',
  crew: 'variable',
  'access unit': 'variable',
  crane: 'variable',
  layer: 'enumMember',
  point: 'property',
  break: 'property',
  section: 'property',
  access: 'property',
  isolation: 'property',
  hatch: 'property',
  'lifting point': 'property',
  'hold-down': 'property',
  brace: 'property',
  cover: 'property',
  step: 'function',
};

export function semanticTokens(session: Session, document: EstateDocument, range?: Range): SemanticTokens {
  const builder = new SemanticTokensBuilder();
  const from = range ? document.offsetAt(range.start) : 0;
  const to = range ? document.offsetAt(range.end) : document.text.length;
  const names = session.symbols();
  const named = new Map<number, { type: string; declaration: boolean }>();
  for (const { start, kind, document: where } of names.declarations)
    if (where === document) named.set(start, { type: typeOf[kind], declaration: true });
  for (const { start, kind } of names.referencesIn(document))
    named.set(start, { type: typeOf[kind], declaration: false });

  const push = (start: number, length: number, type: string, declaration = false): void => {
    const at = document.positionAt(start);
    builder.push(at.line, at.character, length, legend.tokenTypes.indexOf(type), declaration ? 1 : 0);
  };
  const root = document.root().$cstNode;
  if (!root) return builder.build();
  for (const leaf of CstUtils.flattenCst(root)) {
    if (leaf.end <= from || leaf.hidden) continue; // comments are the grammar's business: one may span lines
    if (leaf.offset >= to) break;
    const name = named.get(leaf.offset);
    if (name) {
      push(leaf.offset, leaf.length, name.type, name.declaration);
      continue;
    }
    if (session.client.coloursSyntax) continue;
    const token = leaf.tokenType.name;
    if (token === 'QUANTITY' || token === 'NUMBER' || token === 'DATE' || token === 'CLOCK')
      push(leaf.offset, leaf.length, 'number');
    else if (token === 'STRING') push(leaf.offset, leaf.length, 'string');
    else if (describe(leaf)?.keyword && /[A-Za-z]/.test(leaf.text)) push(leaf.offset, leaf.length, 'keyword');
  }
  return builder.build();
}
