// What the server keeps for one estate: its documents, the names in them, and the analysis of what they make up.
// Everything derived is made when something asks and kept until a text changes.

import type { Location } from 'vscode-languageserver';
import type { Estate } from '../domain/model/estate.js';
import type { Origin } from '../domain/model/origin.js';
import type { Finding } from '../validation/finding.js';
import { defaultSettings, type Settings } from '../protocol/messages.js';
import { symbolIndexOf, type SymbolIndex } from './symbol-index.js';
import { createDocument, type EstateDocument } from './document.js';
import type { Analysis } from '../analysis/analysis.js';
import type { Forecasts } from './forecast-words.js';

/** The incremental analysis behind the session; src/analysis has the real one. */
export interface Analyser {
  set(uri: string, text: string): void;
  delete(uri: string): void;
  analyse(): Analysis;
}

/** What the editor can take, from its capabilities. */
export interface EditorCapabilities {
  readonly snippets: boolean;
  readonly snippetEdits: boolean;
  /** Edits may name the version of the text they were made for. */
  readonly documentChanges: boolean;
  /** The editor colours words and numbers itself and wants only the meaning of names. */
  readonly coloursSyntax: boolean;
  /** Address of the folder with a page for every rule; undefined where there is none, or the editor follows no such link. */
  readonly rulePages?: string;
}

export interface Session {
  settings: Settings;
  client: EditorCapabilities;
  /** The wear model's newest word, which may be of an earlier revision; undefined until it has symbol. */
  forecasts: Forecasts | undefined;
  /** Grows with every change of a text. */
  readonly revision: number;
  document(uri: string): EstateDocument | undefined;
  documents(): readonly EstateDocument[];
  symbols(): SymbolIndex;
  analysis(): Analysis;
  estate(): Estate;
  findingsIn(uri: string): readonly Finding[];
  locationOf(origin: Origin): Location;
  uriOf(origin: Origin): string;
  /** True where an editor has the text open. */
  isOpen(uri: string): boolean;
  open(uri: string, text: string, version: number): void;
  /** A text on disk; does nothing to one that is open. */
  put(uri: string, text: string): void;
  remove(uri: string): void;
}

export function createSession(analyser: Analyser): Session {
  const documents = new Map<string, EstateDocument>();
  let revision = 0;
  let names: SymbolIndex | undefined;
  let analysis: Analysis | undefined;
  let findings: Map<string, Finding[]> | undefined;

  const changed = (): void => {
    revision += 1;
    names = undefined;
    analysis = undefined;
    findings = undefined;
  };
  const set = (document: EstateDocument): void => {
    const before = documents.get(document.uri);
    documents.set(document.uri, document);
    names = undefined; // names point at the very object
    if (before?.text === document.text) return;
    analyser.set(document.uri, document.text);
    changed();
  };

  const session: Session = {
    settings: defaultSettings,
    client: { snippets: true, snippetEdits: false, documentChanges: false, coloursSyntax: false },
    forecasts: undefined,
    get revision() {
      return revision;
    },
    document: (uri) => documents.get(uri),
    documents: () => [...documents.values()],
    symbols: () => (names ??= symbolIndexOf(session.documents())),
    analysis: () => (analysis ??= analyser.analyse()),
    estate: () => session.analysis().estate,
    findingsIn(uri) {
      if (!findings) {
        findings = new Map();
        for (const finding of session.analysis().findings) {
          const at = session.uriOf(finding.origin);
          const list = findings.get(at);
          if (list) list.push(finding);
          else findings.set(at, [finding]);
        }
      }
      return findings.get(uri) ?? [];
    },
    locationOf(origin) {
      const { uri, line, column, endLine, endColumn } = session.analysis().locate(origin);
      return {
        uri,
        range: {
          start: { line: line - 1, character: column - 1 },
          end: { line: endLine - 1, character: endColumn - 1 },
        },
      };
    },
    uriOf: ({ source }) => session.analysis().uriOf(source),
    isOpen: (uri) => documents.get(uri)?.version !== undefined,
    open: (uri, text, version) => set(createDocument(uri, text, version)),
    put(uri, text) {
      if (!session.isOpen(uri)) set(createDocument(uri, text));
    },
    remove(uri) {
      if (!documents.delete(uri)) return;
      analyser.delete(uri);
      changed();
    },
  };
  return session;
}
