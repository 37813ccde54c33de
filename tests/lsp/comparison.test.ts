// The editor's comparison with a revision: through git where there is one, and in words where there is none.

import { URI } from 'vscode-uri';
import path from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { makePreview, type MakePreviewAnswer } from '../../src/protocol/messages.js';
import { createSession } from '../../src/lsp/session.js';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { preview } from '../../src/lsp/handlers/preview-handler.js';
import { gitRevisions } from '../../src/lsp/node-revisions.js';
import { repository } from '../kit/repository.js';
import { estateTexts, nextLook } from '../kit/small-estate.js';
import { startSession, type Session } from './session.js';

let session: Session | undefined;
afterEach(async () => {
  await session?.end();
  session = undefined;
});

const uriIn = (folder: string, name: string): string => URI.file(path.join(folder, name)).toString();

describe('comparing in the editor', () => {
  test('shows what unsaved texts mean against a revision, side by side', () => {
    const { folder, git } = repository(
      Object.fromEntries(Object.entries(estateTexts).map(([name, text]) => [`plant/${name}`, text])),
    );
    git('branch', 'base');
    const here = createSession(makeAnalyser());
    for (const [name, text] of Object.entries({ ...estateTexts, 'looks/new.trough': nextLook }))
      here.put(uriIn(folder, `plant/${name}`), name.includes('2025-09') ? text.replace('8.4', '7.4') : text);
    const read = gitRevisions.read(
      here.documents().map(({ uri }) => uri),
      'base',
    );
    if (!read.ok) throw new Error(read.reason);
    const page = preview(here, { kind: 'comparison', subject: 'base', revision: read.revision });
    expect(page).toMatchObject({ ok: true, title: 'Since base' });
    if (!page.ok) return;
    for (const words of [
      'Before',
      'After',
      'HISTORY EDITED',
      'P1 thickness 8.4 mm',
      'P1 thickness 7.4 mm',
      'looks/new.trough:1',
    ])
      expect(page.body).toContain(words);
  });

  test('says in words which revision is not there, and where there is no repository', () => {
    const { folder } = repository(estateTexts);
    const uris = Object.keys(estateTexts).map((name) => uriIn(folder, name));
    expect(gitRevisions.read(uris, 'nowhere')).toMatchObject({
      ok: false,
      reason: expect.stringContaining('no such revision'),
    });
    expect(gitRevisions.read(['memfs:/a.trough'], 'HEAD')).toMatchObject({
      ok: false,
      reason: expect.stringContaining('no disk'),
    });
    expect(gitRevisions.read([], 'HEAD')).toMatchObject({ ok: false });
  });

  test('says so where no program can be run, as in a browser', async () => {
    session = await startSession(estateTexts);
    const answer = await session.client.sendRequest<MakePreviewAnswer>(makePreview, {
      kind: 'comparison',
      subject: 'HEAD',
    });
    expect(answer).toMatchObject({ ok: false, reason: expect.stringContaining('needs the git command') });
  });
});
