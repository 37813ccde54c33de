// The page was opened on another day than the one it was last typed into: is it the same round or a new one? Nothing is thrown away.

import { button, el, type FormChild } from '../forms/kit.js';
import { show } from './screen.js';
import { keep, resume, startAnother, state, store, takeBack, type Entries } from './state.js';

export function resumeScreen(): readonly FormChild[] {
  const settle = (work: () => void): (() => void) => {
    return () => {
      resume.asked = false;
      work();
      show();
    };
  };
  return [
    el('h2', {}, 'Entries of another day are on this phone'),
    el('p', { class: 'warn', id: 'resume' }, `! ${inShort(state)}.`),
    button('Continue that round', settle(keep), { class: 'main', id: 'continue' }),
    button('Start a new round', settle(startAnother), { id: 'start-new' }),
    el('p', {}, 'A new round leaves the entries on the phone. They are found again below date and meter.'),
  ];
}

/** Rounds that were put aside on this phone. */
export function asideView(): FormChild {
  const found = store.aside();
  if (found.length === 0) return undefined;
  return el('section', { id: 'aside' }, [
    el('h2', {}, 'Earlier rounds on this phone'),
    ...found.map((entries, index) =>
      button(`Open ${inShort(entries)}`, () => {
        takeBack(index);
        show();
      }),
    ),
  ]);
}

function inShort({ date, touched, entries, meter }: Entries): string {
  const count = Object.keys(entries).length;
  return `Round of ${date || 'no date'}, last typed ${touched}: ${count} ${count === 1 ? 'point' : 'points'}, meter ${meter || 'not read'}`;
}
