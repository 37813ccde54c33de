// A real Chromium for what only a browser can tell: where text really lands, what a page's script really does. Without network.

import { existsSync } from 'node:fs';
import { chromium, type Browser } from 'playwright-core';

/** The shell without a window draws the same pages at half the time; a browser named in CHROMIUM goes before it. */
const shell = '/usr/bin/chromium-headless-shell';
const program = process.env['CHROMIUM'] ?? (existsSync(shell) ? shell : '/usr/bin/chromium');

export async function openBrowser(): Promise<Browser> {
  if (!existsSync(program))
    throw new Error(
      `These tests need a Chromium at ${program}: node tests/editor/set-up.mjs puts one there, or name another in CHROMIUM.`,
    );
  return chromium.launch({
    executablePath: program,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

/** Pages that a document takes on its own paper. */
export async function pagesOf(browser: Browser, html: string): Promise<number> {
  const page = await browser.newPage();
  await page.setContent(html);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  await page.close();
  return [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b(?!s)/g)].length;
}
