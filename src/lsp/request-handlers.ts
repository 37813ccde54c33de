// Every request of the protocol with the feature that answers it. Answers wait until the estate is read once, so that they
// never know only a part of it, and then always see the newest text.

import {
  CodeActionKind,
  ErrorCodes,
  LSPErrorCodes,
  ResponseError,
  TextDocumentSyncKind,
  type CancellationToken,
  type Connection,
  type SemanticTokensRangeParams,
  type ServerCapabilities,
} from 'vscode-languageserver';
import {
  draftInspection,
  listSubjects,
  makePreview,
  type DraftInspection,
  type ListSubjectsAnswer,
  type MakePreview,
  type MakePreviewAnswer,
} from '../protocol/messages.js';
import { normal } from './uris.js';
import type { Background } from './background.js';
import type { Revisions } from './revisions.js';
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
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    fileOperations: { didRename: { filters: [{ pattern: { glob: '**/*' } }] } },
  },
};

export interface ServerState {
  /** The estate has been read once. */
  readonly estateLoaded: Promise<void>;
  /** The client has said shutdown. */
  stopped(): boolean;
}

type Answer<R> = Promise<R | ResponseError<void>>;

export function registerHandlers(
  connection: Connection,
  sessions: Sessions,
  background: Background,
  revisions: Revisions,
  state: ServerState,
): void {
  /** Nothing is worked out for a request that was cancelled while it waited, and nothing is answered after shutdown. */
  const answer = async <R>(token: CancellationToken, feature: () => R | Promise<R>): Answer<R> => {
    await state.estateLoaded;
    if (!state.stopped()) await pendingMessages();
    if (state.stopped()) return new ResponseError(ErrorCodes.InvalidRequest, 'The server is shut down.');
    if (token.isCancellationRequested) return cancelled();
    return feature();
  };
  const withText =
    <P extends { textDocument: { uri: string } }, R>(
      feature: (session: Session, document: EstateDocument, params: P) => R,
    ) =>
    (params: P, token: CancellationToken): Answer<R | null> =>
      answer(token, () => {
        const uri = normal(params.textDocument.uri);
        const session = sessions.of(uri);
        const document = session.document(uri);
        return document ? (feature(session, document, params) ?? null) : null;
      });

  registerTextHandlers(connection, withText);
  connection.onWorkspaceSymbol(({ query }, token) =>
    answer(token, () => sessions.all().flatMap((session) => workspaceSymbols(session, query))),
  );
  connection.onRequest(listSubjects, (token: CancellationToken) =>
    answer(token, () => together(sessions.all().map(subjects))),
  );
  connection.onRequest(draftInspection, (params: DraftInspection, token: CancellationToken) =>
    answer(token, () => draft(sessionNear(sessions, params.near, params.conveyor), params)),
  );
  connection.onRequest<MakePreviewAnswer, void>(
    makePreview,
    (params: MakePreview, token: CancellationToken) =>
      answer<MakePreviewAnswer | ResponseError<void>>(token, async () => {
        const isComparison = params.kind === 'comparison';
        const session = sessionNear(sessions, params.near, isComparison ? undefined : params.subject);
        if (!isComparison) return (await background.preview(session, params, token)) ?? cancelled();
        const read = revisions.read(
          session.documents().map(({ uri }) => uri),
          params.subject ?? 'HEAD',
        );
        if (!read.ok) return read;
        const order = { ...params, revision: read.revision };
        return (await background.preview(session, order, token)) ?? cancelled();
      }),
  );
}

/** A turn of the event loop: what has come in meanwhile, a cancellation among it, is heard before the work begins. */
function pendingMessages(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

function cancelled(): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
}

/** A feature of one text as a handler. */
type WithText = <P extends { textDocument: { uri: string } }, R>(
  feature: (session: Session, document: EstateDocument, params: P) => R,
) => (params: P, token: CancellationToken) => Answer<R | null>;

function registerTextHandlers(connection: Connection, withText: WithText): void {
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
  connection.onDocumentSymbol(withText((_session, document) => outline(document)));
  connection.onFoldingRanges(withText((_session, document) => foldingRanges(document)));
  connection.onSelectionRanges(
    withText((_session, document, { positions }) => selectionRanges(document, positions)),
  );
  connection.onDocumentFormatting(withText((_session, document) => formatting(document)));
  connection.onCodeAction(withText((session, document, params) => codeActions(session, document, params)));
  connection.onCodeLens(withText((session, document) => codeLenses(session, document)));
  connection.onDocumentLinks(withText((_session, document) => documentLinks(document)));
  connection.languages.inlayHint.on(
    withText((session, document, { range }) => inlayHints(session, document, range)),
  );
  const coloured = withText((session, document) => semanticTokens(session, document));
  const colouredRange = withText((session, document, { range }: SemanticTokensRangeParams) =>
    semanticTokens(session, document, range),
  );
  connection.languages.semanticTokens.on(
    async (params, token) => (await coloured(params, token)) ?? { data: [] },
  );
  connection.languages.semanticTokens.onRange(
    async (params, token) => (await colouredRange(params, token)) ?? { data: [] },
  );
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
