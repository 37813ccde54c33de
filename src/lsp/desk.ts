// What the server has on its desk: the texts, the names in them, and the analysis of the estate they make up.
// Everything derived is made when something asks and kept until a text changes.

import type { Range } from 'vscode-languageserver';
import type { Analysis } from '../analysis/analyse.js';
import type { Estate } from '../domain/model/estate.js';
import type { Origin } from '../domain/model/origin.js';
import type { Finding } from '../validation/finding.js';
import type { Forecasts } from './forecasts.js';
import { defaultSettings, type Settings } from '../protocol/messages.js';
import { namesOf, type Names } from './names.js';
import { makeText, type Text } from './texts.js';

/** The incremental analysis behind the desk; src/analysis has the real one. */
export interface Analyser {
  set(uri: string, text: string): void;
  delete(uri: string): void;
  analyse(): Analysis;
}

export interface Place {
  readonly uri: string;
  readonly range: Range;
}

/** What the editor can take, from its capabilities. */
export interface Client {
  readonly snippets: boolean;
  readonly snippetEdits: boolean;
  /** The editor colours words and numbers itself and wants only the meaning of names. */
  readonly coloursSyntax: boolean;
}

export interface Desk {
  settings: Settings;
  client: Client;
  /** The wear model's newest word, which may be of an earlier revision; undefined until it has spoken. */
  forecasts: Forecasts | undefined;
  /** Grows with every change of a text. */
  readonly revision: number;
  text(uri: string): Text | undefined;
  texts(): readonly Text[];
  names(): Names;
  analysis(): Analysis;
  estate(): Estate;
  findingsIn(uri: string): readonly Finding[];
  placeOf(origin: Origin): Place;
  uriOf(origin: Origin): string;
  /** True where an editor has the text open. */
  isOpen(uri: string): boolean;
  open(uri: string, text: string, version: number): void;
  /** A text on disk; does nothing to one that is open. */
  put(uri: string, text: string): void;
  remove(uri: string): void;
}

export function makeDesk(analyser: Analyser): Desk {
  const texts = new Map<string, Text>();
  let revision = 0;
  let names: Names | undefined;
  let analysis: Analysis | undefined;
  let findings: Map<string, Finding[]> | undefined;

  const changed = (): void => {
    revision += 1;
    names = undefined;
    analysis = undefined;
    findings = undefined;
  };
  const set = (text: Text): void => {
    const before = texts.get(text.uri);
    texts.set(text.uri, text);
    names = undefined; // names point at the very object
    if (before?.text === text.text) return;
    analyser.set(text.uri, text.text);
    changed();
  };

  const desk: Desk = {
    settings: defaultSettings,
    client: { snippets: true, snippetEdits: false, coloursSyntax: false },
    forecasts: undefined,
    get revision() {
      return revision;
    },
    text: (uri) => texts.get(uri),
    texts: () => [...texts.values()],
    names: () => (names ??= namesOf(desk.texts())),
    analysis: () => (analysis ??= analyser.analyse()),
    estate: () => desk.analysis().estate,
    findingsIn(uri) {
      if (!findings) {
        findings = new Map();
        for (const finding of desk.analysis().findings) {
          const at = desk.uriOf(finding.origin);
          const list = findings.get(at);
          if (list) list.push(finding);
          else findings.set(at, [finding]);
        }
      }
      return findings.get(uri) ?? [];
    },
    placeOf(origin) {
      const { uri, line, column, endLine, endColumn } = desk.analysis().locate(origin);
      return {
        uri,
        range: {
          start: { line: line - 1, character: column - 1 },
          end: { line: endLine - 1, character: endColumn - 1 },
        },
      };
    },
    uriOf: ({ source }) => desk.analysis().uriOf(source),
    isOpen: (uri) => texts.get(uri)?.version !== undefined,
    open: (uri, text, version) => set(makeText(uri, text, version)),
    put(uri, text) {
      if (!desk.isOpen(uri)) set(makeText(uri, text));
    },
    remove(uri) {
      if (!texts.delete(uri)) return;
      analyser.delete(uri);
      changed();
    },
  };
  return desk;
}
