// The language server: greets the client, loads the estate, and puts the three halves together: texts that are kept
// (document-sync.ts), findings that are published (diagnostics-publisher.ts), and requests that are answered
// (request-handlers.ts).

import {
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  TextDocuments,
  WatchKind,
  type ClientCapabilities,
  type Connection,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { StartOptions } from '../protocol/messages.js';
import { normal } from './uris.js';
import type { Background } from './background.js';
import type { Analyser } from './session.js';
import { createSessions } from './sessions.js';
import { syncDocuments, type DocumentSync } from './document-sync.js';
import { extension, type Files } from './files.js';
import { createDiagnosticsPublisher } from './diagnostics-publisher.js';
import { registerHandlers, capabilities } from './request-handlers.js';
import { noRevisions, type Revisions } from './revisions.js';
import { readSettings } from './settings.js';

export interface ServerParts {
  makeAnalyser(): Analyser;
  readonly background: Background;
  /** `reads`: the client answers for folders the server cannot read itself. */
  files(client: { readonly reads: boolean }): Files;
  /** Address of the folder of rule pages that lies beside the program; a client that knows another names it when it starts. */
  readonly rulePages?: string;
  /** Left out where no program may be started. */
  readonly revisions?: Revisions;
}

/** What the client can be asked, from its capabilities. */
interface Can {
  readonly register: boolean;
  readonly configure: boolean;
  readonly changeFolders: boolean;
  readonly refreshHints: boolean;
  readonly refreshLenses: boolean;
}

/** Serves until the client says shutdown; `askedToStop` then turns true, and the process may end on exit. */
export function startServer(
  connection: Connection,
  { makeAnalyser, background, files, rulePages, revisions = noRevisions }: ServerParts,
): { askedToStop(): boolean } {
  const sessions = createSessions(makeAnalyser);
  const documents = new TextDocuments(TextDocument);
  let can = abilities({});
  let loaded = false;
  let stopped = false;
  let markLoaded = (): void => undefined;
  const estateLoaded = new Promise<void>((resolve) => {
    markLoaded = resolve;
  });

  const refreshHints = (): void => {
    if (stopped) return;
    if (can.refreshHints) void connection.languages.inlayHint.refresh();
    if (can.refreshLenses) void connection.sendRequest('workspace/codeLens/refresh');
  };
  const texts = syncDocuments(connection, documents, sessions, () => {
    if (loaded) diagnostics.soon();
  });
  const diagnostics = createDiagnosticsPublisher(
    connection,
    sessions,
    background,
    () => texts.unread,
    refreshHints,
  );

  connection.onInitialize(({ initializationOptions, workspaceFolders, capabilities: client }) => {
    const options = (initializationOptions ?? {}) as StartOptions; // our own client's; another editor's sets nothing that is read here
    can = abilities(client);
    sessions.setClient(clientOf(client, options.rulePages ?? rulePages));
    sessions.setSettings(readSettings(options.settings));
    texts.setFiles(files({ reads: options.clientReads === true }));
    texts.setFolders((workspaceFolders ?? []).map(({ uri }) => normal(uri)));
    return { serverInfo: { name: 'Troughline' }, capabilities };
  });

  connection.onInitialized(async () => {
    try {
      register(connection, can, texts);
      if (can.configure) await askSettings();
      await texts.load();
    } finally {
      loaded = true;
      markLoaded();
      diagnostics.soon();
    }
  });

  const askSettings = async (): Promise<void> => {
    sessions.setSettings(readSettings(await connection.workspace.getConfiguration('troughline')));
  };

  connection.onDidChangeConfiguration(async () => {
    if (can.configure) await askSettings();
    diagnostics.soon();
    refreshHints();
  });

  connection.onShutdown(() => {
    stopped = true;
    diagnostics.stop();
    background.end();
  });

  registerHandlers(connection, sessions, background, revisions, { estateLoaded, stopped: () => stopped });
  documents.listen(connection);
  connection.listen();
  return { askedToStop: () => stopped };
}

function abilities({ workspace }: ClientCapabilities): Can {
  return {
    register: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    configure: workspace?.configuration === true,
    changeFolders: workspace?.workspaceFolders === true,
    refreshHints: workspace?.inlayHint?.refreshSupport === true,
    refreshLenses: workspace?.codeLens?.refreshSupport === true,
  };
}

function clientOf(
  { workspace, textDocument }: ClientCapabilities,
  rulePages: string | undefined,
): Parameters<ReturnType<typeof createSessions>['setClient']>[0] {
  const edits = workspace?.workspaceEdit;
  const leadsToPages = textDocument?.publishDiagnostics?.codeDescriptionSupport === true;
  return {
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    snippetEdits: edits?.snippetEditSupport === true && edits.documentChanges === true,
    documentChanges: edits?.documentChanges === true,
    coloursSyntax: textDocument?.semanticTokens?.augmentsSyntaxTokens === true,
    ...(leadsToPages && rulePages !== undefined ? { rulePages } : {}),
  };
}

/** Asks to be told of files, folders and settings that change, as far as the client offers it. */
function register(connection: Connection, can: Can, texts: DocumentSync): void {
  if (can.register) {
    const watchers = [
      { globPattern: `**/*${extension}` },
      { globPattern: '**/*', kind: WatchKind.Create | WatchKind.Delete },
    ];
    void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers });
  }
  if (can.changeFolders)
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) =>
      texts.changeFolders(
        added.map(({ uri }) => normal(uri)),
        removed.map(({ uri }) => normal(uri)),
      ),
    );
  if (can.configure)
    void connection.client.register(DidChangeConfigurationNotification.type, { section: 'troughline' });
}
