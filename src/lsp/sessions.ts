// One session an estate. A workspace folder is an estate; where the settings name folders inside it (`plants/*`), each of those
// is one of its own. A text outside every workspace folder belongs with its neighbours in the same folder.

import { URI, Utils } from 'vscode-uri';
import { folderOf } from './uris.js';
import { createSession, type Analyser, type EditorCapabilities, type Session } from './session.js';
import { defaultSettings, type Settings } from '../protocol/messages.js';

export interface Sessions {
  /** The session of the estate that a text belongs to, made where there is none yet. */
  of(uri: string): Session;
  all(): readonly Session[];
  /** Workspace folders; documents move to the right session again. */
  setFolders(folders: readonly string[]): void;
  setSettings(settings: Settings): void;
  setClient(client: EditorCapabilities): void;
  remove(uri: string): void;
}

export function createSessions(makeAnalyser: () => Analyser): Sessions {
  const sessions = new Map<string, Session>();
  let folders: readonly string[] = [];
  let settings = defaultSettings;
  let client: EditorCapabilities = {
    snippets: true,
    snippetEdits: false,
    documentChanges: false,
    coloursSyntax: false,
  };

  const rootOf = (uri: string): string => estateOf(uri, folders, settings.estates);
  const sessionAt = (root: string): Session => {
    const known = sessions.get(root);
    if (known) return known;
    const session = createSession(makeAnalyser());
    session.settings = settings;
    session.client = client;
    sessions.set(root, session);
    return session;
  };
  const sortAgain = (): void => {
    const texts = [...sessions.values()].flatMap((session) => session.documents());
    sessions.clear();
    for (const { uri, text, version } of texts) {
      if (version === undefined) sessionAt(rootOf(uri)).put(uri, text);
      else sessionAt(rootOf(uri)).open(uri, text, version);
    }
  };

  return {
    of: (uri) => sessionAt(rootOf(uri)),
    all: () => [...sessions.values()],
    setFolders(given) {
      folders = given;
      sortAgain();
    },
    setSettings(given) {
      const moved = given.estates.join('\n') !== settings.estates.join('\n');
      settings = given;
      for (const session of sessions.values()) session.settings = given;
      if (moved) sortAgain();
    },
    setClient(given) {
      client = given;
      for (const session of sessions.values()) session.client = given;
    },
    remove(uri) {
      const root = rootOf(uri);
      const session = sessions.get(root);
      session?.remove(uri);
      if (session?.documents().length === 0) sessions.delete(root);
    },
  };
}

/** Address of the folder that is the estate of a text. */
export function estateOf(uri: string, folders: readonly string[], patterns: readonly string[]): string {
  const folder = folderOf(uri, folders);
  if (folder === undefined) return Utils.dirname(URI.parse(uri)).toString();
  const inside = uri
    .slice(folder.length + 1)
    .split('/')
    .slice(0, -1);
  for (const pattern of patterns) {
    const wanted = pattern.split('/').filter((part) => part !== '' && part !== '.');
    if (
      wanted.length > 0 &&
      wanted.length <= inside.length &&
      wanted.every((part, index) => part === '*' || part === decodeURIComponent(inside[index] ?? ''))
    ) {
      return [folder, ...inside.slice(0, wanted.length)].join('/');
    }
  }
  return folder;
}
