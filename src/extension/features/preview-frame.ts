// The frame around a page in a webview. The page brings styles and markup and no script; only our own script runs, by nonce.
// It comes as a sheet of paper inside the frame, so that the editor's theme stays around it.

import * as vscode from 'vscode';
import type { MakePreview, MakePreviewAnswer } from '../../protocol/messages.js';

export function pageInFrame(
  webview: vscode.Webview,
  media: vscode.Uri,
  page: Extract<MakePreviewAnswer, { ok: true }>,
  wanted: MakePreview,
): string {
  return frame(webview, media, wanted, page.styles, page.body, page.title);
}

/** A few words instead of a page: what is being done, or why there is nothing. */
export function wordsInFrame(
  webview: vscode.Webview,
  media: vscode.Uri,
  words: { readonly title: string; readonly text: string },
  wanted: MakePreview,
): string {
  return frame(
    webview,
    media,
    wanted,
    '',
    `<main class="reason" role="status"><h1>${escape(words.title)}</h1><p>${escape(words.text)}</p></main>`,
    words.title,
  );
}

function frame(
  webview: vscode.Webview,
  media: vscode.Uri,
  wanted: MakePreview,
  styles: string,
  content: string,
  title: string,
): string {
  const nonce = makeNonce();
  const script = webview.asWebviewUri(vscode.Uri.joinPath(media, 'page.js')).toString();
  const style = webview.asWebviewUri(vscode.Uri.joinPath(media, 'page.css')).toString();
  const labels = {
    save: vscode.l10n.t('Save as HTML…'),
    refresh: vscode.l10n.t('Refresh'),
    stale: vscode.l10n.t('The text has changed since.'),
    kept: vscode.l10n.t('The last page that could be made; the text says less now.'),
    follow: vscode.l10n.t('Open in the text'),
  };
  const policy = [
    "default-src 'none'",
    `style-src ${webview.cspSource} 'nonce-${nonce}'`,
    `script-src 'nonce-${nonce}'`,
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escape(title)}</title>
<style nonce="${nonce}">${styles}</style>
<link rel="stylesheet" href="${style}">
</head>
<body data-wanted="${escape(JSON.stringify(wanted))}" data-follow="${escape(labels.follow)}" data-kept="${escape(labels.kept)}">
<header class="bar" role="toolbar" aria-label="${escape(vscode.l10n.t('Page'))}">
<button type="button" id="refresh">${escape(labels.refresh)}</button>
<button type="button" id="save">${escape(labels.save)}</button>
<span id="stale" role="status" hidden>${escape(labels.stale)}</span>
</header>
${content}
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

function escape(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
}

function makeNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
