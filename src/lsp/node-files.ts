// The disk, for a server that runs as a process of its own. Everything else is asked of the client, if it offers to read.

import { statSync } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { URI } from 'vscode-uri';
import type { PhotoLook } from '../analysis/analysis.js';
import {
  decodeText,
  extension,
  isSkippedFolder,
  largestText,
  notText,
  tooLarge,
  type Files,
} from './files.js';
import type { PagePhotos } from './handlers/preview-handler.js';
import { photoAddress } from './photo-address.js';
import { photosOfAPage } from './photo-files.js';

export function nodeFiles(client: Files | undefined): Files {
  const onDisk = (uri: string): boolean => uri.startsWith('file:');
  return {
    async list(folder) {
      if (!onDisk(folder)) return (await client?.list(folder)) ?? [];
      return (await walk(URI.parse(folder).fsPath)).map((file) => URI.file(file).toString());
    },
    async read(uri) {
      if (!onDisk(uri)) return client?.read(uri);
      try {
        const file = URI.parse(uri).fsPath;
        return (await stat(file)).size > largestText
          ? tooLarge
          : (decodeText(await readFile(file)) ?? notText);
      } catch {
        return undefined; // gone, or no right to read it: for the estate it is not there
      }
    },
  };
}

/** Whether a photo lies beside its text; nothing is known of texts that are not on this disk. */
export const photosOnDisk: PhotoLook = (textUri, photo) => {
  const address = textUri.startsWith('file:') ? photoAddress(textUri, photo) : undefined;
  if (address === undefined) return undefined;
  try {
    const found = statSync(URI.parse(address).fsPath);
    return found.isFile() ? found.size : 'missing';
  } catch {
    return 'missing'; // not there, or no right to read it
  }
};

/** Photos of one page as addresses that it carries inside; texts that are not on this disk have none. */
export const pagePhotosOnDisk: PagePhotos = () => {
  const photo = photosOfAPage();
  return (textUri, path) =>
    textUri.startsWith('file:') ? photo(URI.parse(textUri).fsPath, path) : undefined;
};

async function walk(folder: string): Promise<string[]> {
  let entries;
  try {
    entries = await readdir(folder, { withFileTypes: true });
  } catch {
    return [];
  }
  const found: string[] = [];
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const full = path.join(folder, entry.name);
    if (entry.isDirectory() && !isSkippedFolder(entry.name)) found.push(...(await walk(full)));
    else if (entry.isFile() && entry.name.endsWith(extension)) found.push(full);
  }
  return found;
}
