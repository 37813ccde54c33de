// A real client and a real server in one process, talking the protocol over a pair of streams.

import { PassThrough } from 'node:stream';
import { createConnection } from 'vscode-languageserver/node';
import {
  createProtocolConnection,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ExitNotification,
  InitializeRequest,
  InitializedNotification,
  PublishDiagnosticsNotification,
  ShutdownRequest,
  StreamMessageReader,
  StreamMessageWriter,
  type Diagnostic,
  type FileChangeType,
  type InitializeParams,
  type InitializeResult,
  type Position,
  type ProtocolConnection,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { backgroundHere } from '../../src/lsp/background.js';
import type { Files } from '../../src/lsp/files.js';
import { nodeSolver } from '../../src/solver/node-solver.js';
import { startServer } from '../../src/lsp/server.js';
import {
  defaultSettings,
  estateChanged,
  type EstateChanged,
  type Settings,
  type StartOptions,
} from '../../src/protocol/messages.js';

export const root = 'file:///estate';

export interface Session {
  readonly client: ProtocolConnection;
  readonly initialized: InitializeResult;
  /** Files on the pretended disk, by name relative to the folder. */
  readonly disk: Map<string, string>;
  uri(name: string): string;
  open(name: string, text?: string): void;
  change(name: string, text: string): void;
  close(name: string): void;
  /** Writes to the pretended disk and tells the server, as a file watcher does. */
  write(name: string, text: string | undefined, type: FileChangeType): void;
  /** Findings of a text once the server has settled. */
  findings(name: string): Promise<readonly Diagnostic[]>;
  /** Waits until the server has told of the newest change. */
  settled(): Promise<EstateChanged>;
  text(name: string): string;
  end(): Promise<void>;
}

export interface SessionOptions {
  readonly settings?: Partial<Settings>;
  readonly capabilities?: InitializeParams['capabilities'];
  readonly start?: StartOptions;
}

/** Starts a server on files given by name and text; a `‸` in a text marks the cursor and is taken out. */
export async function startSession(
  files: Readonly<Record<string, string>>,
  options: SessionOptions = {},
): Promise<Session> {
  const up = new PassThrough();
  const down = new PassThrough();
  const disk = new Map(Object.entries(files).map(([name, text]) => [name, text.replace('‸', '')]));
  const uri = (name: string): string => `${root}/${name}`;
  const nameOf = (address: string): string => decodeURIComponent(address.slice(root.length + 1));
  const read: Files = {
    list: async (folder) =>
      folder === root
        ? [...disk.keys()].map(uri)
        : [...disk.keys()].map(uri).filter((each) => each.startsWith(`${folder}/`)),
    read: async (address) => disk.get(nameOf(address)),
  };
  // vscode-languageserver ends the process when its client says exit; a test must outlive its server.
  const server = createConnection(new StreamMessageReader(up), new StreamMessageWriter(down));
  startServer(server, { makeAnalyser, background: backgroundHere(nodeSolver), files: () => read });

  const client = createProtocolConnection(new StreamMessageReader(down), new StreamMessageWriter(up));
  const published = new Map<string, readonly Diagnostic[]>();
  let news: EstateChanged | undefined;
  let waiting: ((told: EstateChanged) => void)[] = [];
  let due = true;
  client.onNotification(
    PublishDiagnosticsNotification.type,
    ({ uri: address, diagnostics }) => void published.set(nameOf(address), diagnostics),
  );
  client.onNotification(estateChanged, (told: EstateChanged) => {
    news = told;
    due = false;
    for (const tell of waiting) tell(told);
    waiting = [];
  });
  client.onRequest('client/registerCapability', () => null);
  client.onRequest('workspace/configuration', () => [{ ...defaultSettings, ...options.settings }]);
  client.listen();

  const initialized = await client.sendRequest(InitializeRequest.type, {
    processId: null,
    rootUri: null,
    ...(options.start ? { initializationOptions: options.start } : {}),
    workspaceFolders: [{ uri: root, name: 'estate' }],
    capabilities: options.capabilities ?? {
      textDocument: { completion: { completionItem: { snippetSupport: true } } },
      workspace: { configuration: true },
    },
  });
  await client.sendNotification(InitializedNotification.type, {});

  const versions = new Map<string, number>();
  const session: Session = {
    client,
    initialized,
    disk,
    uri,
    open(name, text = disk.get(name) ?? '') {
      versions.set(name, 1);
      due = true;
      void client.sendNotification(DidOpenTextDocumentNotification.type, {
        textDocument: { uri: uri(name), languageId: 'troughline', version: 1, text: text.replace('‸', '') },
      });
    },
    change(name, text) {
      const version = (versions.get(name) ?? 0) + 1;
      versions.set(name, version);
      due = true;
      void client.sendNotification(DidChangeTextDocumentNotification.type, {
        textDocument: { uri: uri(name), version },
        contentChanges: [{ text }],
      });
    },
    close(name) {
      due = true;
      void client.sendNotification(DidCloseTextDocumentNotification.type, {
        textDocument: { uri: uri(name) },
      });
    },
    write(name, text, type) {
      if (text === undefined) disk.delete(name);
      else disk.set(name, text);
      due = true;
      void client.sendNotification(DidChangeWatchedFilesNotification.type, {
        changes: [{ uri: uri(name), type }],
      });
    },
    async settled() {
      if (!due && news) return news;
      return new Promise((resolve) => waiting.push(resolve));
    },
    async findings(name) {
      await session.settled();
      return published.get(name) ?? [];
    },
    text: (name) => disk.get(name) ?? '',
    async end() {
      await client.sendRequest(ShutdownRequest.type);
      client.end();
      client.dispose();
      server.dispose();
    },
  };
  void ExitNotification; // not sent: it would end the test's own process
  return session;
}

/** Where the `‸` stands in a text, as the protocol counts. */
export function cursor(text: string): Position {
  const at = text.indexOf('‸');
  if (at < 0) throw new Error('The text has no ‸.');
  return spot(text.replace('‸', ''), at);
}

/** Position of the first (or given) occurrence of some words, plus an offset into them. */
export function at(text: string, words: string, into = 0, occurrence = 1): Position {
  let index = -1;
  for (let found = 0; found < occurrence; found += 1) {
    index = text.indexOf(words, index + 1);
    if (index < 0) throw new Error(`'${words}' is not in the text ${occurrence} times.`);
  }
  return spot(text, index + into);
}

function spot(text: string, offset: number): Position {
  return TextDocument.create('x:', 'troughline', 0, text).positionAt(offset);
}

/** The text after some edits. */
export function applied(text: string, edits: readonly TextEdit[]): string {
  return TextDocument.applyEdits(TextDocument.create('x:', 'troughline', 0, text), [...edits]);
}

/** All texts of the session's disk after a workspace edit, by name, only those that changed. */
export function afterEdit(session: Session, edit: WorkspaceEdit | null | undefined): Record<string, string> {
  const after: Record<string, string> = {};
  for (const [address, edits] of Object.entries(edit?.changes ?? {})) {
    const name = address.slice(root.length + 1);
    after[name] = applied(session.text(name), edits);
  }
  return after;
}
