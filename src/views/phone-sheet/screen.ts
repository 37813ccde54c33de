// From one screen of the phone sheet to the next; what is shown is always drawn anew from what is written down.

import type { Entry } from './entry.js';
import { keep, state, type Screen } from './state.js';

/** The number being typed with the keypad, before it is a reading. */
export const keypad = { typing: '' };

/** What would take the place of steel that was seen, until the inspector says which of the two is true. */
export const question: {
  instead: { readonly entry: Entry | undefined; readonly typing: string } | undefined;
} = {
  instead: undefined,
};

let draw = (): void => undefined;

/** Who draws the screens says so once, at the start. */
export function drawWith(given: () => void): void {
  draw = given;
}

export function show(): void {
  draw();
}

export function go(view: Screen, at = state.at): void {
  state.view = view;
  state.at = at;
  keypad.typing = '';
  question.instead = undefined;
  keep();
  show();
  window.scrollTo(0, 0);
  const within = document.getElementById('view');
  // Whoever reads by ear hears the new screen; a button that is still there keeps its place.
  if (document.activeElement === null || document.activeElement === document.body)
    within?.focus({ preventScroll: true });
}

const passed = { at: -Infinity, point: -1 };

/** On to another point; a wet screen that takes one tap for two does not skip the next. */
export function goOn(at: number, end = false): void {
  const now = performance.now();
  const isEcho = now - passed.at < 350 && passed.point === state.at && keypad.typing === '';
  if (isEcho) return;
  Object.assign(passed, { at: now, point: end ? -1 : at });
  if (end) go('list');
  else go('point', at);
}

/** Something was answered since: a tap on Next is meant. */
export function answered(): void {
  passed.at = -Infinity;
}

/** A function that takes what was typed into a field and keeps it. */
export function keeping(take: (value: string) => void): (value: string) => void {
  return (value) => {
    take(value);
    keep();
  };
}
