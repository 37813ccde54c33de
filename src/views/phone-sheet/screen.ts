// From one screen of the phone sheet to the next; what is shown is always drawn anew from what is written down.

import { keep, state, type Entry, type Screen } from './state.js';

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
}

/** A function that takes what was typed into a field and keeps it. */
export function keeping(take: (value: string) => void): (value: string) => void {
  return (value) => {
    take(value);
    keep();
  };
}
