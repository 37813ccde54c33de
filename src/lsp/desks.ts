// One desk an estate. A workspace folder is an estate; where the settings name folders inside it (`plants/*`), each of those
// is one of its own. A text outside every workspace folder belongs with its neighbours in the same folder.

import { URI, Utils } from 'vscode-uri';
import { folderOf } from './addresses.js';
import { makeDesk, type Analyser, type Client, type Desk } from './desk.js';
import { defaultSettings, type Settings } from '../protocol/messages.js';

export interface Desks {
  /** The desk of the estate that a text belongs to, made where there is none yet. */
  of(uri: string): Desk;
  all(): readonly Desk[];
  /** Workspace folders; texts on desks are put to the right one again. */
  setFolders(folders: readonly string[]): void;
  setSettings(settings: Settings): void;
  setClient(client: Client): void;
  remove(uri: string): void;
}

export function makeDesks(makeAnalyser: () => Analyser): Desks {
  const desks = new Map<string, Desk>();
  let folders: readonly string[] = [];
  let settings = defaultSettings;
  let client: Client = { snippets: true, snippetEdits: false, coloursSyntax: false };

  const rootOf = (uri: string): string => estateOf(uri, folders, settings.estates);
  const deskAt = (root: string): Desk => {
    const known = desks.get(root);
    if (known) return known;
    const desk = makeDesk(makeAnalyser());
    desk.settings = settings;
    desk.client = client;
    desks.set(root, desk);
    return desk;
  };
  const sortAgain = (): void => {
    const texts = [...desks.values()].flatMap((desk) => desk.texts());
    desks.clear();
    for (const { uri, text, version } of texts) {
      if (version === undefined) deskAt(rootOf(uri)).put(uri, text);
      else deskAt(rootOf(uri)).open(uri, text, version);
    }
  };

  return {
    of: (uri) => deskAt(rootOf(uri)),
    all: () => [...desks.values()],
    setFolders(given) {
      folders = given;
      sortAgain();
    },
    setSettings(given) {
      const moved = given.estates.join('\n') !== settings.estates.join('\n');
      settings = given;
      for (const desk of desks.values()) desk.settings = given;
      if (moved) sortAgain();
    },
    setClient(given) {
      client = given;
      for (const desk of desks.values()) desk.client = given;
    },
    remove(uri) {
      const root = rootOf(uri);
      const desk = desks.get(root);
      desk?.remove(uri);
      if (desk?.texts().length === 0) desks.delete(root);
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
