// One spelling for an address, so that what the disk says and what the editor says are the same text.

import { URI } from 'vscode-uri';
import { isSkippedFolder } from './files.js';

export function normal(uri: string): string {
  return URI.parse(uri).toString();
}

/** The workspace folder that an address lies in, the innermost of several. */
export function folderOf(uri: string, folders: readonly string[]): string | undefined {
  return folders.filter((each) => uri.startsWith(`${each}/`)).sort((a, b) => b.length - a.length)[0];
}

/** True for what lies in a workspace folder and not in one of its folders that hold no estate. */
export function belongsToEstate(uri: string, folders: readonly string[]): boolean {
  const folder = folderOf(uri, folders);
  return (
    folder !== undefined &&
    !uri
      .slice(folder.length + 1)
      .split('/')
      .slice(0, -1)
      .some((name) => isSkippedFolder(decodeURIComponent(name)))
  );
}
