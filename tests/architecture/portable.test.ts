// Nothing in the sources or the build holds on one system only: a path is no address, and no program has a fixed place.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import path from 'node:path';
import { expect, test } from 'vitest';
import { findBrowser } from '../../src/cli/find-browser.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const own = path.join('tests', 'architecture', 'portable.test.ts');
const files = ['src', 'tests', '.ci', 'examples', 'syntaxes']
  .flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).map((name) =>
      path.join(folder, name),
    ),
  )
  .filter((name) => /\.m?[tj]s$/.test(name) && name !== own && !name.includes('generated'));

test.each([
  ['an address read as a path', /import\.meta\.url\)\.pathname|\broot\.pathname\b/],
  ['a path written as an address', /file:\/\/\$\{/],
  ['a shell at a fixed place', /['"`]\/bin\/(ba)?sh\b/],
])('%s is nowhere', (_, pattern) => {
  expect(files.length).toBeGreaterThan(300);
  expect(files.filter((name) => pattern.test(readFileSync(path.join(root, name), 'utf8')))).toEqual([]);
});

test('a browser is found where the installers of each system put it', () => {
  const only = (place: string) => (file: string) => file === place;
  const chrome = 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe';
  expect(findBrowser('win32', { PROGRAMFILES: 'C:\\Program Files' }, only(chrome))).toBe(chrome);
  const edge = 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe';
  expect(findBrowser('win32', { 'PROGRAMFILES(X86)': 'C:\\Program Files (x86)' }, only(edge))).toBe(edge);
  const mac = '/Users/a/Applications/Chromium.app/Contents/MacOS/Chromium';
  expect(findBrowser('darwin', { HOME: '/Users/a' }, only(mac))).toBe(mac);
  expect(findBrowser('linux', { PATH: '/a:/usr/bin' }, only('/usr/bin/chromium'))).toBe('/usr/bin/chromium');
  expect(findBrowser('linux', { PATH: '' }, () => false)).toBeUndefined();
});
