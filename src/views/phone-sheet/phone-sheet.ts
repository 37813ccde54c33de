// The phone sheet: the screens of an inspection, and the block that comes out of them. Bundled into one script that a page without
// a network carries along.

import { el, type FormChild } from '../forms/kit.js';
import { finishScreen, moreScreen } from './other-screens.js';
import { listScreen, placeScreen, pointScreen } from './point-screens.js';
import { drawWith, show } from './screen.js';
import { startScreen } from './start-screen.js';
import { app, data, keep, notKept, state, store, type Screen } from './state.js';

const screens: Readonly<Record<Screen, () => readonly FormChild[]>> = {
  start: startScreen,
  list: listScreen,
  point: pointScreen,
  place: placeScreen,
  more: moreScreen,
  finish: finishScreen,
};

drawWith(() => {
  // What a browser kept may be of another version of this page.
  const screen = (screens as Partial<typeof screens>)[state.view] ?? startScreen;
  const content = screen();
  app.replaceChildren(
    banner(),
    el('div', { id: 'view', 'data-view': state.view }, content),
    el('footer', { id: 'kept', role: 'status' }, store.words()),
  );
});
// Asks the browser at once whether it keeps anything, so that NOT KEPT is said before the first reading.
keep();
show();

function banner(): HTMLElement {
  const way = data.look === 'downstream' ? 'Material moves away from you.' : 'Material comes towards you.';
  return el('header', {}, [
    el('div', { class: 'who' }, `${data.name} ${data.title}`),
    el('div', { class: 'look' }, `LOOK ${data.look.toUpperCase()}`),
    el('div', { class: 'not-kept', id: 'not-kept', role: 'alert' }, notKept()),
    el('div', { class: 'way' }, `${way} 3 o’clock is on your right.`),
  ]);
}
