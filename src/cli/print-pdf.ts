// Prints a page to PDF with the Chromium of this machine, without network and with a profile that is thrown away.

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { Trouble, type Console } from './console.js';
import { findBrowser } from './find-browser.js';

const flags = [
  '--headless',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-extensions',
  '--no-pdf-header-footer',
  '--run-all-compositor-stages-before-draw',
];

export function printPdf(html: string, console: Console): Uint8Array {
  const program = findChromium(console);
  const folder = mkdtempSync(path.join(os.tmpdir(), 'troughline-'));
  try {
    const page = path.join(folder, 'page.html');
    const pdf = path.join(folder, 'page.pdf');
    writeFileSync(page, html);
    const sandbox = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
    const done = spawnSync(
      program,
      [
        ...flags,
        ...sandbox,
        `--user-data-dir=${path.join(folder, 'profile')}`,
        `--print-to-pdf=${pdf}`,
        pathToFileURL(page).href,
      ],
      { stdio: 'ignore', timeout: 120_000 },
    );
    if (done.status !== 0 || !existsSync(pdf))
      throw new Trouble(
        `${path.basename(program)} did not print the page (${done.signal ?? done.status ?? done.error?.message}); print the HTML from a browser instead`,
      );
    return readFileSync(pdf);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

function findChromium(console: Console): string {
  const named = console.env['CHROMIUM'];
  if (named) {
    if (existsSync(named)) return named;
    throw new Trouble(`CHROMIUM names ${named}, which is not there`);
  }
  const found = findBrowser(process.platform, console.env, existsSync);
  if (!found)
    throw new Trouble(
      'PDF needs Chromium, Chrome or Edge on this machine: install it, name it in CHROMIUM, or print the HTML from a browser',
    );
  return found;
}
