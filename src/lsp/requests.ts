// Every request of the protocol with the feature that answers it. Answers wait until the estate is read once, so that they
// never know only a part of it, and then always see the newest text.

import {
  CodeActionKind,
  TextDocumentSyncKind,
  type Connection,
  type ServerCapabilities,
} from 'vscode-languageserver';
import {
  draftInspection,
  listSubjects,
  makePreview,
  type DraftInspection,
  type ListSubjectsAnswer,
  type MakePreview,
} from '../protocol/messages.js';
import { normal } from './addresses.js';
import type { Background } from './background.js';
import type { Desk } from './desk.js';
import type { Desks } from './desks.js';
import { codeActions, fixAll } from './features/code-actions.js';
import { codeLenses } from './features/code-lens.js';
import { completion } from './features/completion.js';
import { definition } from './features/definition.js';
import { draft } from './features/draft-inspection.js';
import { foldingRanges } from './features/folding.js';
import { formatting } from './features/formatting.js';
import { highlights } from './features/highlights.js';
import { hover } from './features/hover.js';
import { inlayHints } from './features/inlay-hints.js';
import { documentLinks } from './features/links.js';
import { outline } from './features/outline.js';
import { references } from './features/references.js';
import { prepareRename, rename } from './features/rename.js';
import { selectionRanges } from './features/selection.js';
import { subjects } from './features/subjects.js';
import { legend, semanticTokens } from './features/tokens.js';
import { workspaceSymbols } from './features/workspace-symbols.js';
import type { Text } from './texts.js';

export const capabilities: ServerCapabilities = {
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
  hoverProvider: true,
  completionProvider: { triggerCharacters: [' ', '.'] },
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  renameProvider: { prepareProvider: true },
  documentSymbolProvider: true,
  workspaceSymbolProvider: true,
  foldingRangeProvider: true,
  selectionRangeProvider: true,
  documentFormattingProvider: true,
  codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAll] },
  codeLensProvider: {},
  documentLinkProvider: {},
  inlayHintProvider: true,
  semanticTokensProvider: { legend, full: true, range: true },
  workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
};

export function answerRequests(
  connection: Connection,
  desks: Desks,
  background: Background,
  estateLoaded: Promise<void>,
): void {
  const withText =
    <P extends { textDocument: { uri: string } }, R>(feature: (desk: Desk, text: Text, params: P) => R) =>
    async (params: P): Promise<R | null> => {
      await estateLoaded;
      const uri = normal(params.textDocument.uri);
      const desk = desks.of(uri);
      const text = desk.text(uri);
      return text ? (feature(desk, text, params) ?? null) : null;
    };
  const afterLoad = async <R>(feature: () => R): Promise<R> => {
    await estateLoaded;
    return feature();
  };

  connection.onHover(withText((desk, text, { position }) => hover(desk, text, position)));
  connection.onCompletion(withText((desk, text, { position }) => completion(desk, text, position)));
  connection.onDefinition(withText((desk, text, { position }) => definition(desk, text, position)));
  connection.onReferences(
    withText((desk, text, { position, context }) =>
      references(desk, text, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(withText((desk, text, { position }) => highlights(desk, text, position)));
  connection.onPrepareRename(withText((desk, text, { position }) => prepareRename(desk, text, position)));
  connection.onRenameRequest(
    withText((desk, text, { position, newName }) => rename(desk, text, position, newName)),
  );
  connection.onDocumentSymbol(withText((_desk, text) => outline(text)));
  connection.onWorkspaceSymbol(({ query }) =>
    afterLoad(() => desks.all().flatMap((desk) => workspaceSymbols(desk, query))),
  );
  connection.onFoldingRanges(withText((_desk, text) => foldingRanges(text)));
  connection.onSelectionRanges(withText((_desk, text, { positions }) => selectionRanges(text, positions)));
  connection.onDocumentFormatting(withText((_desk, text) => formatting(text)));
  connection.onCodeAction(withText((desk, text, params) => codeActions(desk, text, params)));
  connection.onCodeLens(withText((desk, text) => codeLenses(desk, text)));
  connection.onDocumentLinks(withText((_desk, text) => documentLinks(text)));
  connection.languages.inlayHint.on(withText((desk, text, { range }) => inlayHints(desk, text, range)));
  const coloured = withText((desk, text) => semanticTokens(desk, text));
  connection.languages.semanticTokens.on(async (params) => (await coloured(params)) ?? { data: [] });
  connection.languages.semanticTokens.onRange(
    async (params) =>
      (await withText((desk, text) => semanticTokens(desk, text, params.range))(params)) ?? { data: [] },
  );

  connection.onRequest(listSubjects, () => afterLoad(() => together(desks.all().map(subjects))));
  connection.onRequest(draftInspection, (params: DraftInspection) =>
    afterLoad(() => draft(deskNear(desks, params.near, params.conveyor), params)),
  );
  connection.onRequest(makePreview, async (params: MakePreview) => {
    await estateLoaded;
    return background.preview(deskNear(desks, params.near, params.subject), params);
  });
}

/** The estate of a text, or else the first that has a thing of the name. */
function deskNear(desks: Desks, near: string | undefined, name: string | undefined): Desk {
  if (near !== undefined) return desks.of(normal(near));
  const plain = name?.split('.').at(-1);
  const having = desks
    .all()
    .find((desk) => desk.names().declarations.some((declaration) => declaration.name === plain));
  return (
    having ??
    desks.all().find((desk) => desk.names().declared('conveyor').length > 0) ??
    desks.all()[0] ??
    desks.of('untitled:estate/none')
  );
}

function together(answers: readonly ListSubjectsAnswer[]): ListSubjectsAnswer {
  const newest = answers
    .flatMap(({ newestRecord }) => newestRecord ?? [])
    .sort()
    .at(-1);
  return {
    plants: answers.flatMap(({ plants }) => plants),
    conveyors: answers.flatMap(({ conveyors }) => conveyors),
    jobs: answers.flatMap(({ jobs }) => jobs),
    ...(newest ? { newestRecord: newest } : {}),
  };
}
