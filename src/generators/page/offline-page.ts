// A single HTML file that works by itself on a phone without a network: its own style and script and nothing else. The content
// security policy names both by hash, so that nothing an author typed into a record could ever run.

import { escapeHtml } from './markup.js';
import { sha256Base64 } from './sha256.js';

export interface OfflinePage {
  readonly title: string;
  /** Style sheet and script, written in our code, never taken from a file. */
  readonly styles: string;
  readonly script: string;
  /** Given to the script as JSON in the element with the id `data`. */
  readonly data: unknown;
  /** Shown until the script runs, and where it cannot. */
  readonly fallback: string;
}

export function offlinePage(page: OfflinePage): string {
  const policy =
    `default-src 'none'; script-src 'sha256-${sha256Base64(page.script)}'; ` +
    `style-src 'sha256-${sha256Base64(page.styles)}'; base-uri 'none'; form-action 'none'`;
  return [
    '<!DOCTYPE html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${escapeHtml(policy)}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light">',
    `<title>${escapeHtml(page.title)}</title>`,
    `<style>${page.styles}</style>`,
    '</head>',
    '<body>',
    `<main id="app"><p>${escapeHtml(page.fallback)}</p></main>`,
    // Inside a script element only these can end it or open a comment; JSON reads the escapes back.
    `<script type="application/json" id="data">${JSON.stringify(page.data)
      .replace(/</g, '\\u003c')
      .replace(/\u2028/g, '\\u2028')
      .replace(/\u2029/g, '\\u2029')}</script>`,
    `<script>${page.script}</script>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
