// Revisions read through the git command, from the folder that all texts of the estate lie in.

import path from 'node:path';
import { URI } from 'vscode-uri';
import { readRevision } from '../cli/git/revision.js';
import { decodeText } from './files.js';
import type { Revisions } from './revisions.js';

export const gitRevisions: Revisions = {
  read(uris, revision) {
    const files = uris.map((uri) => URI.parse(uri)).filter(({ scheme }) => scheme === 'file');
    const [first] = files;
    if (!first || files.length < uris.length)
      return {
        ok: false,
        reason: 'These texts lie on no disk, so there is no repository to compare them with.',
      };
    const folder = commonFolder(files.map(({ fsPath }) => path.dirname(fsPath)));
    const read = readRevision(revision, folder);
    if (!read.ok) return { ok: false, reason: `${read.message}.` };
    const texts = read.texts.map(({ path: name, bytes }) => ({
      uri: URI.file(path.join(folder, name)).toString(),
      text: decodeText(bytes),
    }));
    const bad = texts.find(({ text }) => text === undefined);
    if (bad) return { ok: false, reason: `${bad.uri} is no UTF-8 text in ${revision}.` };
    return {
      ok: true,
      revision: {
        name: revision,
        folder: URI.file(folder).toString(),
        texts: texts.map(({ uri, text }) => ({ uri, text: text ?? '' })),
      },
    };
  },
};

function commonFolder(folders: readonly string[]): string {
  return folders.reduce((common, folder) => {
    let now = common;
    while (now !== path.dirname(now) && folder !== now && !folder.startsWith(`${now}${path.sep}`))
      now = path.dirname(now);
    return now;
  });
}
