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
import { normal } from './uris.js';
import type { Background } from './background.js';
import type { Session } from './session.js';
import type { Sessions } from './sessions.js';
import { codeActions, fixAll } from './providers/code-action-provider.js';
import { codeLenses } from './providers/code-lens-provider.js';
import { completion } from './providers/completion-provider.js';
import { definition } from './providers/definition-provider.js';
import { draft } from './handlers/draft-inspection-handler.js';
import { foldingRanges } from './providers/folding-range-provider.js';
import { formatting } from './providers/formatting-provider.js';
import { highlights } from './providers/document-highlight-provider.js';
import { hover } from './providers/hover-provider.js';
import { inlayHints } from './providers/inlay-hint-provider.js';
import { documentLinks } from './providers/document-link-provider.js';
import { outline } from './providers/document-symbol-provider.js';
import { references } from './providers/references-provider.js';
import { prepareRename, rename } from './providers/rename-provider.js';
import { selectionRanges } from './providers/selection-range-provider.js';
import { subjects } from './handlers/subjects-handler.js';
import { legend, semanticTokens } from './providers/semantic-token-provider.js';
import { workspaceSymbols } from './providers/workspace-symbol-provider.js';
import type { EstateDocument } from './document.js';

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

export function registerHandlers(
  connection: Connection,
  sessions: Sessions,
  background: Background,
  estateLoaded: Promise<void>,
): void {
  const withText =
    <P extends { textDocument: { uri: string } }, R>(
      feature: (session: Session, document: EstateDocument, params: P) => R,
    ) =>
    async (params: P): Promise<R | null> => {
      await estateLoaded;
      const uri = normal(params.textDocument.uri);
      const session = sessions.of(uri);
      const document = session.document(uri);
      return document ? (feature(session, document, params) ?? null) : null;
    };
  const afterLoad = async <R>(feature: () => R): Promise<R> => {
    await estateLoaded;
    return feature();
  };

  connection.onHover(withText((session, document, { position }) => hover(session, document, position)));
  connection.onCompletion(
    withText((session, document, { position }) => completion(session, document, position)),
  );
  connection.onDefinition(
    withText((session, document, { position }) => definition(session, document, position)),
  );
  connection.onReferences(
    withText((session, document, { position, context }) =>
      references(session, document, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(
    withText((session, document, { position }) => highlights(session, document, position)),
  );
  connection.onPrepareRename(
    withText((session, document, { position }) => prepareRename(session, document, position)),
  );
  connection.onRenameRequest(
    withText((session, document, { position, newName }) => rename(session, document, position, newName)),
  );
  connection.onDocumentSymbol(withText((_desk, document) => outline(document)));
  connection.onWorkspaceSymbol(({ query }) =>
    afterLoad(() => sessions.all().flatMap((session) => workspaceSymbols(session, query))),
  );
  connection.onFoldingRanges(withText((_desk, document) => foldingRanges(document)));
  connection.onSelectionRanges(
    withText((_desk, document, { positions }) => selectionRanges(document, positions)),
  );
  connection.onDocumentFormatting(withText((_desk, document) => formatting(document)));
  connection.onCodeAction(withText((session, document, params) => codeActions(session, document, params)));
  connection.onCodeLens(withText((session, document) => codeLenses(session, document)));
  connection.onDocumentLinks(withText((_desk, document) => documentLinks(document)));
  connection.languages.inlayHint.on(
    withText((session, document, { range }) => inlayHints(session, document, range)),
  );
  const coloured = withText((session, document) => semanticTokens(session, document));
  connection.languages.semanticTokens.on(async (params) => (await coloured(params)) ?? { data: [] });
  connection.languages.semanticTokens.onRange(
    async (params) =>
      (await withText((session, document) => semanticTokens(session, document, params.range))(params)) ?? {
        data: [],
      },
  );

  connection.onRequest(listSubjects, () => afterLoad(() => together(sessions.all().map(subjects))));
  connection.onRequest(draftInspection, (params: DraftInspection) =>
    afterLoad(() => draft(sessionNear(sessions, params.near, params.conveyor), params)),
  );
  connection.onRequest(makePreview, async (params: MakePreview) => {
    await estateLoaded;
    return background.preview(sessionNear(sessions, params.near, params.subject), params);
  });
}

/** The estate of a text, or else the first that has a thing of the name. */
function sessionNear(sessions: Sessions, near: string | undefined, name: string | undefined): Session {
  if (near !== undefined) return sessions.of(normal(near));
  const plain = name?.split('.').at(-1);
  const having = sessions
    .all()
    .find((session) => session.symbols().declarations.some((declaration) => declaration.name === plain));
  return (
    having ??
    sessions.all().find((session) => session.symbols().declared('conveyor').length > 0) ??
    sessions.all()[0] ??
    sessions.of('untitled:estate/none')
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
