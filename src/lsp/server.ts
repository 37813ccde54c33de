// The language server: connects the protocol to the desk and its features. It holds no rules and no text handling of its
// own. A request always sees the newest text; findings follow a moment after the last keystroke.

import {
  CodeActionKind, DiagnosticSeverity, DidChangeConfigurationNotification, DidChangeWatchedFilesNotification, FileChangeType, TextDocumentSyncKind, TextDocuments, WatchKind,
  type Connection, type Diagnostic, type InitializeParams, type InitializeResult,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI, Utils } from 'vscode-uri';
import {
  defaultSettings, draftInspection, estateChanged, listSubjects, makePreview,
  type DraftInspection, type EstateChanged, type ListSubjectsAnswer, type MakePreview, type Settings, type StartOptions,
} from '../protocol/messages.js';
import type { Background } from './background.js';
import type { Analyser, Desk } from './desk.js';
import { makeDesks } from './desks.js';
import { extension, isSkippedFolder, type Files } from './files.js';
import { codeActions, fixAll } from './features/code-actions.js';
import { codeLenses } from './features/code-lens.js';
import { completion } from './features/completion.js';
import { definition } from './features/definition.js';
import { diagnosticsOf, source } from './features/diagnostics.js';
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

export interface ServerParts {
  makeAnalyser(): Analyser;
  readonly background: Background;
  /** The client's answers for folders the server cannot read are given in. */
  files(client: { readonly reads: boolean }): Files;
}

/** How long the server waits after a keystroke before it judges the estate, in milliseconds; longer only where judging takes longer. */
const pause = 40;
const longestPause = 400;
/** Forecasts wait until nobody has typed for so long, in milliseconds. */
const rest = 1500;

/** Serves until the client says shutdown; `askedToStop` then turns true, and the process may end on exit. */
export function startServer(connection: Connection, parts: ServerParts): { askedToStop(): boolean } {
  const desks = makeDesks(() => parts.makeAnalyser());
  const documents = new TextDocuments(TextDocument);
  let files: Files = parts.files({ reads: false });
  let folders: string[] = [];
  let canRegister = false;
  let canConfigure = false;
  let canChangeFolders = false;
  let canRefresh = { hints: false, lenses: false, tokens: false };

  connection.onInitialize((params: InitializeParams): InitializeResult => {
    const options = (params.initializationOptions ?? {}) as StartOptions; // the client's own object, or another editor's, which sets nothing we read
    files = parts.files({ reads: options.clientReads === true });
    desks.setSettings(merged(options.settings));
    folders = (params.workspaceFolders ?? []).map(({ uri }) => normal(uri));
    desks.setFolders(folders);
    const { workspace, textDocument } = params.capabilities;
    canRegister = workspace?.didChangeWatchedFiles?.dynamicRegistration === true;
    canConfigure = workspace?.configuration === true;
    canChangeFolders = workspace?.workspaceFolders === true;
    canRefresh = {
      hints: workspace?.inlayHint?.refreshSupport === true,
      lenses: workspace?.codeLens?.refreshSupport === true,
      tokens: workspace?.semanticTokens?.refreshSupport === true,
    };
    desks.setClient({
      snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
      snippetEdits: workspace?.workspaceEdit?.snippetEditSupport === true && workspace.workspaceEdit.documentChanges === true,
      coloursSyntax: textDocument?.semanticTokens?.augmentsSyntaxTokens === true,
    });
    return { serverInfo: { name: 'Troughline' }, capabilities };
  });

  connection.onInitialized(async () => {
    if (canRegister) {
      void connection.client.register(DidChangeWatchedFilesNotification.type, {
        watchers: [
          { globPattern: `**/*${extension}` },
          // A folder that comes or goes is told of by its own name only.
          { globPattern: '**/*', kind: WatchKind.Create | WatchKind.Delete },
        ],
      });
    }
    if (canConfigure) {
      void connection.client.register(DidChangeConfigurationNotification.type, { section: 'troughline' });
      await readSettings();
    }
    if (canChangeFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(async ({ added, removed }) => {
        for (const { uri } of removed) removeFolder(normal(uri));
        folders = [...folders.filter((folder) => !removed.some(({ uri }) => normal(uri) === folder)), ...added.map(({ uri }) => normal(uri))];
        desks.setFolders(folders);
        for (const { uri } of added) await addFolder(normal(uri));
        judgeSoon();
      });
    }
    try {
      for (const folder of folders) await addFolder(folder);
    } finally {
      markLoaded();
      loaded = true;
      judgeSoon();
    }
  });

  async function readSettings(): Promise<void> {
    const given: unknown = await connection.workspace.getConfiguration('troughline');
    desks.setSettings(merged(given as Partial<Settings> | undefined)); // what is missing or of another shape falls back to the defaults in merged()
  }

  connection.onDidChangeConfiguration(async () => {
    if (canConfigure) await readSettings();
    published.clear();
    judgeSoon();
    refreshHints();
  });

  // ---------------------------------------------------------------------------------------------- texts

  async function addFolder(folder: string): Promise<void> {
    const uris = await files.list(folder);
    await Promise.all(uris.map((uri) => addFile(normal(uri))));
  }

  async function addFile(uri: string): Promise<void> {
    const text = await files.read(uri);
    unread.delete(uri);
    if (typeof text === 'string') desks.of(uri).put(uri, text);
    else if (text !== undefined && !desks.of(uri).isOpen(uri)) {
      desks.remove(uri);
      unread.set(uri, text.reason);
    } else if (!desks.of(uri).isOpen(uri)) desks.remove(uri);
    judgeSoon();
  }

  function allTexts(): readonly Text[] {
    return desks.all().flatMap((desk) => desk.texts());
  }

  function removeFolder(folder: string): void {
    for (const { uri } of allTexts()) if (uri.startsWith(`${folder}/`) && !desks.of(uri).isOpen(uri)) desks.remove(uri);
    judgeSoon();
  }

  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const change of changes) {
      const uri = normal(change.uri);
      const isText = uri.endsWith(extension);
      if (change.type === FileChangeType.Deleted) {
        if (!isText) removeFolder(uri);
        else {
          unread.delete(uri);
          if (!desks.of(uri).isOpen(uri)) desks.remove(uri);
        }
        judgeSoon();
      } else if (isText) await addFile(uri);
      else if (change.type === FileChangeType.Created && !inSkippedFolder(uri)) await addFolder(uri);
    }
  });

  documents.onDidChangeContent(({ document }) => {
    const uri = normal(document.uri);
    unread.delete(uri);
    desks.of(uri).open(uri, document.getText(), document.version);
    judgeSoon();
  });

  documents.onDidClose(async ({ document }) => {
    const uri = normal(document.uri);
    desks.remove(uri); // what is on disk counts again, if it is part of the estate
    if (folders.some((folder) => uri.startsWith(`${folder}/`))) await addFile(uri);
    judgeSoon();
  });

  // ---------------------------------------------------------------------------------------------- findings

  const published = new Map<string, string>();
  /** Files that are there and cannot be read as text, with the reason. */
  const unread = new Map<string, string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  let restTimer: ReturnType<typeof setTimeout> | undefined;
  let wait = pause;
  let loaded = false;
  let markLoaded = (): void => undefined;
  /** Until then an answer would know only part of the estate. */
  const estateLoaded = new Promise<void>((resolve) => {
    markLoaded = resolve;
  });

  let stopped = false;
  connection.onShutdown(() => {
    stopped = true;
    clearTimeout(timer);
    clearTimeout(restTimer);
    parts.background.end();
  });

  function judgeSoon(): void {
    if (!loaded || stopped) return;
    clearTimeout(timer);
    timer = setTimeout(judge, wait);
  }

  function judge(): void {
    timer = undefined;
    const started = performance.now();
    try {
      publish();
    } catch (fault) {
      connection.console.error(`Troughline could not check the estate: ${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}`);
    }
    wait = Math.min(longestPause, Math.max(pause, performance.now() - started));
  }

  function publish(): void {
    const told = new Set<string>();
    const counts = { errors: 0, warnings: 0, information: 0 };
    let revision = 0;
    let conveyors = 0;
    for (const desk of desks.all()) {
      for (const { uri, version } of desk.texts()) {
        told.add(uri);
        tell(uri, diagnosticsOf(desk, uri), version);
      }
      const { findings, estate } = desk.analysis();
      for (const { severity } of findings) counts[severity === 'error' ? 'errors' : severity === 'warning' ? 'warnings' : 'information'] += 1;
      conveyors += estate.conveyors.length;
      revision += desk.revision;
    }
    for (const [uri, reason] of unread) {
      if (told.has(uri)) continue;
      told.add(uri);
      counts.errors += 1;
      tell(uri, [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, severity: DiagnosticSeverity.Error, source, message: reason }]);
    }
    for (const uri of published.keys()) if (!told.has(uri)) tell(uri, []);
    const news: EstateChanged = { revision, texts: told.size - unread.size, conveyors, ...counts };
    void connection.sendNotification(estateChanged, news);
    refreshHints();
    clearTimeout(restTimer);
    restTimer = setTimeout(() => void forecast(), rest);
  }

  async function forecast(): Promise<void> {
    for (const desk of desks.all()) {
      if (stopped || desk.forecasts?.revision === desk.revision || desk.estate().inspections.length === 0) continue;
      try {
        desk.forecasts = await parts.background.forecasts(desk);
      } catch (fault) {
        if (!stopped) connection.console.error(`Troughline could not forecast: ${fault instanceof Error ? fault.message : String(fault)}`);
      }
    }
    if (!stopped) refreshHints();
  }

  function tell(uri: string, diagnostics: Diagnostic[], version?: number): void {
    const now = JSON.stringify(diagnostics);
    if ((published.get(uri) ?? '[]') !== now) void connection.sendDiagnostics({ uri, diagnostics, ...(version === undefined ? {} : { version }) });
    if (diagnostics.length > 0) published.set(uri, now);
    else published.delete(uri);
  }

  function refreshHints(): void {
    if (canRefresh.hints) void connection.languages.inlayHint.refresh();
    if (canRefresh.lenses) void connection.sendRequest('workspace/codeLens/refresh');
  }

  // ---------------------------------------------------------------------------------------------- features

  const withText = <P extends { textDocument: { uri: string } }, R>(feature: (desk: Desk, text: Text, params: P) => R) =>
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
  connection.onReferences(withText((desk, text, { position, context }) => references(desk, text, position, context.includeDeclaration)));
  connection.onDocumentHighlight(withText((desk, text, { position }) => highlights(desk, text, position)));
  connection.onPrepareRename(withText((desk, text, { position }) => prepareRename(desk, text, position)));
  connection.onRenameRequest(withText((desk, text, { position, newName }) => rename(desk, text, position, newName)));
  connection.onDocumentSymbol(withText((_desk, text) => outline(text)));
  connection.onWorkspaceSymbol(({ query }) => afterLoad(() => desks.all().flatMap((desk) => workspaceSymbols(desk, query))));
  connection.onFoldingRanges(withText((_desk, text) => foldingRanges(text)));
  connection.onSelectionRanges(withText((_desk, text, { positions }) => selectionRanges(text, positions)));
  connection.onDocumentFormatting(withText((_desk, text) => formatting(text)));
  connection.onCodeAction(withText((desk, text, params) => codeActions(desk, text, params)));
  connection.onCodeLens(withText((desk, text) => codeLenses(desk, text)));
  connection.onDocumentLinks(withText((_desk, text) => documentLinks(text)));
  connection.languages.inlayHint.on(withText((desk, text, { range }) => inlayHints(desk, text, range)));
  connection.languages.semanticTokens.on(async (params) => (await withText((desk, text) => semanticTokens(desk, text))(params)) ?? { data: [] });
  connection.languages.semanticTokens.onRange(async (params) => (await withText((desk, text) => semanticTokens(desk, text, params.range))(params)) ?? { data: [] });

  connection.onRequest(listSubjects, () => afterLoad(() => together(desks.all().map(subjects))));
  connection.onRequest(makePreview, async (params: MakePreview) => {
    await estateLoaded;
    return parts.background.preview(deskNear(params.near, params.subject), params);
  });
  connection.onRequest(draftInspection, (params: DraftInspection) => afterLoad(() => draft(deskNear(params.near, params.conveyor), params)));

  /** The estate of a text, or else the first that has a thing of the name. */
  function deskNear(near: string | undefined, name: string | undefined): Desk {
    if (near !== undefined) return desks.of(normal(near));
    const plain = name?.split('.').at(-1);
    const having = desks.all().find((desk) => desk.names().declarations.some((declaration) => declaration.name === plain));
    return having ?? desks.all().find((desk) => desk.names().declared('conveyor').length > 0) ?? desks.of(`${folders[0] ?? 'untitled:'}/`);
  }

  documents.listen(connection);
  connection.listen();
  return { askedToStop: () => stopped };
}

const capabilities: InitializeResult['capabilities'] = {
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

/** One spelling for an address, so that what the disk says and what the editor says are the same text. */
function normal(uri: string): string {
  return URI.parse(uri).toString();
}

function inSkippedFolder(uri: string): boolean {
  return URI.parse(uri).path.split('/').some(isSkippedFolder) || Utils.basename(URI.parse(uri)).startsWith('.');
}

function together(answers: readonly ListSubjectsAnswer[]): ListSubjectsAnswer {
  const newest = answers.flatMap(({ newestRecord }) => newestRecord ?? []).sort().at(-1);
  return {
    plants: answers.flatMap(({ plants }) => plants),
    conveyors: answers.flatMap(({ conveyors }) => conveyors),
    jobs: answers.flatMap(({ jobs }) => jobs),
    ...(newest ? { newestRecord: newest } : {}),
  };
}

function merged(given: Partial<Settings> | undefined | null): Settings {
  return {
    estates: Array.isArray(given?.estates) ? given.estates.filter((each) => typeof each === 'string') : defaultSettings.estates,
    inlayHints: { ...defaultSettings.inlayHints, ...given?.inlayHints },
    codeLens: { ...defaultSettings.codeLens, ...given?.codeLens },
    diagnostics: { ...defaultSettings.diagnostics, ...given?.diagnostics },
  };
}
