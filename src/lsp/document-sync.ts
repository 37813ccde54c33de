// Keeps the sessions in step with the world: folders of the workspace, files on disk as they come, change and go, and the
// texts that are open in the editor, which win over what is on disk.

import { FileChangeType, type Connection, type FileEvent, type TextDocuments } from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { belongsToEstate, normal } from './uris.js';
import type { Sessions } from './sessions.js';
import { extension, type Files } from './files.js';

export interface DocumentSync {
  /** Files that are there and cannot be read as text, with the reason. */
  readonly unread: ReadonlyMap<string, string>;
  setFiles(files: Files): void;
  setFolders(folders: readonly string[]): void;
  readonly folders: readonly string[];
  load(): Promise<void>;
  changeFolders(added: readonly string[], removed: readonly string[]): Promise<void>;
}

/** `changed` is called after every change of any text. */
export function syncDocuments(
  connection: Connection,
  documents: TextDocuments<TextDocument>,
  sessions: Sessions,
  changed: () => void,
): DocumentSync {
  const unread = new Map<string, string>();
  let folders: readonly string[] = [];
  let files: Files = { list: async () => [], read: async () => undefined };

  const inEstate = (uri: string): boolean => belongsToEstate(uri, folders);
  const isOpen = (uri: string): boolean => sessions.of(uri).isOpen(uri);

  const drop = (uri: string): void => {
    unread.delete(uri);
    if (!isOpen(uri)) sessions.remove(uri);
  };

  /** A file that is gone says nothing more, though a tab may still show it; a key in that tab brings it back. */
  const gone = (uri: string): void => {
    unread.delete(uri);
    sessions.remove(uri);
  };

  const addFile = async (uri: string): Promise<void> => {
    const shown = documents.all().find((document) => normal(document.uri) === uri);
    if (shown) {
      sessions.of(uri).open(uri, shown.getText(), shown.version);
      return changed();
    }
    if (!inEstate(uri)) return;
    const text = await files.read(uri);
    drop(uri);
    if (typeof text === 'string') sessions.of(uri).put(uri, text);
    else if (text !== undefined && !isOpen(uri)) unread.set(uri, text.reason);
    changed();
  };

  const addFolder = async (folder: string): Promise<void> => {
    const uris = await files.list(folder);
    await Promise.all(uris.map((uri) => addFile(normal(uri))));
  };

  const removeFolder = (folder: string): void => {
    const inside = [
      ...sessions
        .all()
        .flatMap((session) => session.documents())
        .map(({ uri }) => uri),
      ...unread.keys(),
    ].filter((uri) => uri.startsWith(`${folder}/`));
    for (const uri of inside) drop(uri);
    changed();
  };

  const renamed = (old: string): void => {
    const inside = sessions
      .all()
      .flatMap((session) => session.documents())
      .filter(({ uri }) => uri === old || uri.startsWith(`${old}/`));
    for (const { uri } of inside) gone(uri);
  };

  followDisk(connection, { addFile, addFolder, removeFolder, gone, renamed, inEstate, changed });

  documents.onDidChangeContent(({ document }) => {
    const uri = normal(document.uri);
    unread.delete(uri);
    sessions.of(uri).open(uri, document.getText(), document.version);
    changed();
  });

  documents.onDidClose(async ({ document }) => {
    const uri = normal(document.uri);
    sessions.remove(uri); // what is on disk counts again, if it is part of the estate
    await addFile(uri);
    changed();
  });

  return {
    unread,
    get folders() {
      return folders;
    },
    setFiles(given) {
      files = given;
    },
    setFolders(given) {
      folders = given;
      sessions.setFolders(given);
    },
    async load() {
      for (const folder of folders) await addFolder(folder);
    },
    async changeFolders(added, removed) {
      for (const folder of removed) removeFolder(folder);
      this.setFolders([...folders.filter((folder) => !removed.includes(folder)), ...added]);
      for (const folder of added) await addFolder(folder);
      changed();
    },
  };
}

/** What is done about files and folders that come, go and move; addresses in their normal form. */
interface DiskFollower {
  addFile(uri: string): Promise<void>;
  addFolder(folder: string): Promise<void>;
  removeFolder(folder: string): void;
  gone(uri: string): void;
  renamed(old: string): void;
  inEstate(uri: string): boolean;
  changed(): void;
}

function followDisk(connection: Connection, on: DiskFollower): void {
  const follow = async ({ uri: given, type }: FileEvent): Promise<void> => {
    const uri = normal(given);
    if (uri.endsWith(extension)) {
      if (type !== FileChangeType.Deleted) return on.addFile(uri);
      on.gone(uri);
      on.changed();
    } else if (type === FileChangeType.Deleted) on.removeFolder(uri);
    // Anything else that appears may be a folder with texts in it: it is told of by its own name only.
    else if (type === FileChangeType.Created && on.inEstate(`${uri}/`)) await on.addFolder(uri);
  };
  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const change of changes) await follow(change);
  });
  connection.workspace.onDidRenameFiles(({ files }) => {
    for (const { oldUri } of files) on.renamed(normal(oldUri));
    on.changed();
  });
}
