// Changes of several texts for the editor. Where it takes versions, each text is named with the one the change was made for, so
// that an edit never lands in a text that has moved on meanwhile.

import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { EstateDocument } from './document.js';
import type { Session } from './session.js';

export function workspaceEdit(
  { client }: Session,
  edits: ReadonlyMap<EstateDocument, readonly TextEdit[]>,
): WorkspaceEdit {
  if (!client.documentChanges)
    return { changes: Object.fromEntries([...edits].map(([{ uri }, own]) => [uri, [...own]])) };
  return {
    documentChanges: [...edits].map(([{ uri, version }, own]) => ({
      textDocument: { uri, version: version ?? null },
      edits: [...own],
    })),
  };
}
