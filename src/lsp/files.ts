// Where the texts of a folder come from when no editor has them open. A desktop server reads the disk itself; in a
// browser, or for a folder that is not on a disk, the client reads for it.

import type { Connection } from 'vscode-languageserver';
import {
  listTexts,
  readTexts,
  type ListTexts,
  type ListTextsAnswer,
  type ReadTexts,
  type ReadTextsAnswer,
} from '../protocol/messages.js';

export interface Files {
  /** Addresses of all `.trough` files under a folder; none for something that is not a folder. */
  list(folder: string): Promise<readonly string[]>;
  /** Undefined for a file that is gone or may not be read; a reason for one that is there and is no text of ours. */
  read(uri: string): Promise<string | Unread | undefined>;
}

export interface Unread {
  /** A sentence for the Problems view. */
  readonly reason: string;
}

export const notText: Unread = { reason: 'This file is not UTF-8 text. It is left out of the estate.' };
export const tooLarge: Unread = {
  reason:
    'This file is larger than 50 MB. It is left out of the estate in the editor; the command line reads it.',
};

/** Larger files are not an estate someone wrote. */
export const largestText = 50 * 1024 * 1024;

export const extension = '.trough';

/** Folders that hold no estate: tool output and everything hidden. */
export function isSkippedFolder(name: string): boolean {
  return name.startsWith('.') || name === 'node_modules' || name === 'out' || name === 'dist';
}

/** UTF-8, with or without a byte order mark; undefined where the bytes are not UTF-8. */
export function decodeText(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

export function clientFiles(connection: Connection): Files {
  return {
    async list(folder) {
      const question: ListTexts = { folder };
      return connection.sendRequest<ListTextsAnswer>(listTexts, question);
    },
    async read(uri) {
      const question: ReadTexts = { uris: [uri] };
      const [text] = await connection.sendRequest<ReadTextsAnswer>(readTexts, question);
      return text === null ? undefined : (text ?? undefined);
    },
  };
}
