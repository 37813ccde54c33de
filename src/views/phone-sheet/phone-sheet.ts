// The phone sheet: the screens of an inspection, and the block that comes out of them. Bundled into one script that a page without
// a network carries along. The frame stays, only the screen in it is drawn anew, so that a screen reader hears what changed.

import { el, type FormChild } from '../forms/kit.js';
import { keepingFocus } from '../forms/focus.js';
import { entryWords } from './entry.js';
import { finishScreen, moreScreen } from './other-screens.js';
import { listScreen, placeScreen, pointScreen, typeSign } from './point-screens.js';
import { resumeScreen } from './resume-screen.js';
import { drawWith, goOn, keypad, show } from './screen.js';
import { wrongScreen } from './something-wrong.js';
import { startScreen } from './start-screen.js';
import { app, data, keep, notKept, redrawWith, resume, rows, state, store, type Screen } from './state.js';

const screens: Readonly<Record<Screen, () => readonly FormChild[]>> = {
  start: startScreen,
  list: listScreen,
  point: pointScreen,
  place: placeScreen,
  wrong: wrongScreen,
  more: moreScreen,
  finish: finishScreen,
};

const called: Readonly<Record<Screen, string>> = {
  start: 'Date and meter',
  list: 'All points',
  point: 'One point',
  place: 'Another place',
  wrong: 'Something wrong',
  more: 'Hold-downs, current, findings',
  finish: 'Finish',
};

const way = el('div', { class: 'way' });
const bar = el('div', { id: 'bar' });
const view = el('div', { id: 'view', tabindex: '-1' });
const kept = el('footer', { id: 'kept', role: 'status' });
const said = el('div', { id: 'said', class: 'unseen', role: 'status' });
app.replaceChildren(
  el('header', {}, [el('div', { class: 'who' }, `${data.name} ${data.title}`), way]),
  bar,
  view,
  kept,
  said,
);

function draw(): void {
  // What a browser kept may be of another version of this page.
  const name = state.view in screens ? state.view : 'start';
  const content = resume.asked ? resumeScreen() : screens[name]();
  view.dataset['view'] = resume.asked ? 'resume' : name;
  view.setAttribute('aria-label', resume.asked ? 'Continue or new' : called[name]);
  view.replaceChildren(
    ...content.filter((child) => child !== undefined && child !== null && child !== false),
  );
  app.classList.toggle('narrow', name === 'point' && !resume.asked);
  const flow = state.look === 'downstream' ? 'away from you' : 'towards you';
  way.textContent = `Material moves ${flow}. 3 o’clock is on your right.`;
  bar.replaceChildren(
    el('div', { class: 'look' }, `LOOK ${state.look.toUpperCase()}`),
    ...(name === 'point' && !resume.asked ? [display()] : []),
    el('div', { class: 'not-kept', id: 'not-kept', role: 'alert' }, notKept()),
  );
  kept.replaceChildren(store.words());
}

/** The number typed, always in sight while the keypad is. */
function display(): HTMLElement {
  const entry =
    rows()[state.at] && (state.entries as Partial<typeof state.entries>)[rows()[state.at]?.id ?? ''];
  const words = entry ? entryWords(entry) : keypad.typing || 'open';
  if (said.textContent !== words) said.textContent = words;
  return el('div', { class: 'display', id: 'display' }, words);
}

drawWith(() => keepingFocus(app, draw));
redrawWith(show);
// Asks the browser at once whether it keeps anything, so that NOT KEPT is said before the first reading.
if (resume.asked) store.keep(state);
else keep();
show();

document.addEventListener('keydown', (event) => {
  const { target, key } = event;
  if (state.view !== 'point' || resume.asked || event.ctrlKey || event.metaKey || event.altKey) return;
  if (target instanceof Element && target.closest('input, select, textarea')) return;
  const sign = key === 'Backspace' ? '⌫' : key === ',' ? '.' : key;
  if (/^[\d.⌫]$/.test(sign)) typeSign(sign);
  else if (key === 'ArrowRight') goOn(Math.min(rows().length - 1, state.at + 1));
  else if (key === 'ArrowLeft') goOn(Math.max(0, state.at - 1));
  else if (key === 'Enter' && !(target instanceof HTMLButtonElement))
    document.getElementById('next')?.click();
  else return;
  event.preventDefault();
});
