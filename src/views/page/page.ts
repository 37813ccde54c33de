// The script of a page in a webview: leads from an element to its line in the text, keeps the place where the reader was,
// and says when the text has moved on.

import type { FromPage, ToPage } from '../../protocol/webview.js';

interface Memory {
  readonly wanted: unknown;
  readonly scroll: number;
}

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): Memory | undefined;
  setState(state: Memory): void;
};

const editor = acquireVsCodeApi();
const wanted: unknown = JSON.parse(document.body.dataset['wanted'] ?? 'null');
const before = editor.getState();

fit();
addEventListener('resize', fit);
remember();
if (before && JSON.stringify(before.wanted) === JSON.stringify(wanted)) window.scrollTo(0, before.scroll);
addEventListener('scroll', remember, { passive: true });
button('refresh', () => editor.postMessage({ type: 'refresh' }));
button('save', () => editor.postMessage({ type: 'save' }));
for (const element of document.querySelectorAll<HTMLElement | SVGElement>('[data-origin]'))
  leadToText(element);
addEventListener('message', (event: MessageEvent<ToPage>) => {
  say(event.data);
});
editor.postMessage({ type: 'ready' });

/** A sheet wider than the view is shown smaller, as a whole, the way paper lies on a desk; small print stops at half size. */
function fit(): void {
  const sheet = document.getElementById('sheet');
  if (!sheet) return;
  sheet.style.zoom = '1';
  const room = document.documentElement.clientWidth - 24;
  sheet.style.zoom = String(Math.max(0.5, Math.min(1, room / sheet.offsetWidth)));
}

function remember(): void {
  editor.setState({ wanted, scroll: window.scrollY });
}

/** Beside the buttons; why there is no newer page is heard as well as seen. */
function say(message: ToPage): void {
  const words = document.getElementById('stale');
  if (!words) return;
  if (message.type === 'kept') words.textContent = `${document.body.dataset['kept'] ?? ''} ${message.reason}`;
  words.hidden = false;
}

function button(id: string, act: () => void): void {
  document.getElementById(id)?.addEventListener('click', act);
}

function leadToText(element: HTMLElement | SVGElement): void {
  const follow = (): void => editor.postMessage({ type: 'open', origin: element.dataset['origin'] ?? '' });
  element.tabIndex = 0;
  if (element.tagName !== 'TR') element.setAttribute('role', 'link');
  if (element instanceof HTMLElement) element.title = document.body.dataset['follow'] ?? '';
  element.addEventListener('click', (event) => {
    // Marking text to copy it is not a click.
    if (!getSelection()?.isCollapsed) return;
    event.stopPropagation();
    follow();
  });
  element.addEventListener('keydown', (event) => {
    if (!(event instanceof KeyboardEvent) || event.key !== 'Enter' || event.target !== element) return;
    event.preventDefault();
    follow();
  });
}
