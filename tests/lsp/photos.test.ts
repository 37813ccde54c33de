// The report in the editor carries the photos that lie beside the texts, as the page of the command line does, and nothing from
// elsewhere: not what a link leads to outside the folder, not the photos of a text that is on no disk.

import { mkdtempSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { makeAnalyser } from '../../src/lsp/analyser.js';
import { preview } from '../../src/lsp/handlers/preview-handler.js';
import { pagePhotosOnDisk } from '../../src/lsp/node-files.js';
import { createSession } from '../../src/lsp/session.js';

const example = new URL('../../examples/7-five-years/', import.meta.url);
const named = '"photos/2026-02-09-P1.png"';
const folder = mkdtempSync(path.join(os.tmpdir(), 'troughline-photos-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function reportBody(uriOf: (name: string) => string): string {
  const session = createSession(makeAnalyser());
  for (const name of ['plant.trough', 'history.trough'])
    session.put(uriOf(name), readFileSync(new URL(name, example), 'utf8'));
  const made = preview(session, { kind: 'report', subject: 'KB7' }, undefined, pagePhotosOnDisk);
  if (!made.ok) throw new Error(made.reason);
  expect(made.body).toContain('photos/2026-02-09-P1.png');
  return made.body;
}

test('a photo beside the text is in the page, byte for byte', () => {
  const bytes = readFileSync(new URL('photos/2026-02-09-P1.png', example)).toString('base64');
  const body = reportBody((name) => new URL(name, example).href);
  expect(body).toContain(`src="data:image/png;base64,${bytes}"`);
});

test('a link out of the folder, and a text that is on no disk, show the name only', () => {
  mkdirSync(path.join(folder, 'estate', 'photos'), { recursive: true });
  writeFileSync(path.join(folder, 'secret.png'), 'not for the page');
  symlinkSync(path.join(folder, 'secret.png'), path.join(folder, 'estate', named.slice(1, -1)));
  expect(reportBody((name) => pathToFileURL(path.join(folder, 'estate', name)).href)).not.toContain(
    'data:image',
  );
  expect(reportBody((name) => `vscode-vfs://works/${name}`)).not.toContain('data:image');
});
