// A field that says under itself, in words, when what stands in it cannot be read. It keeps what was typed as it was typed.

import { el, field, type ElementSettings } from '../forms/kit.js';
import { keeping } from './screen.js';

export interface JudgedField {
  readonly words: string;
  readonly value: string;
  readonly take: (value: string) => void;
  /** Why what is written down now cannot be read; empty where it can. */
  readonly why: () => string;
  readonly settings: ElementSettings;
}

export function judgedField({ words, value, take, why, settings }: JudgedField): HTMLElement {
  const told = el('span', { class: 'why', role: 'status' });
  const judge = (): void => {
    const reason = why();
    told.textContent = reason === '' ? '' : `! Cannot be read: ${reason}. It is kept as typed.`;
  };
  const made = field(
    words,
    value,
    keeping((typed) => {
      take(typed);
      judge();
    }),
    settings,
  );
  judge();
  made.append(told);
  // What is said of one field may depend on its neighbour.
  made.addEventListener('judge', judge);
  return made;
}

/** For fields that are read together. */
export function judgeAgain(within: ParentNode): void {
  for (const each of within.querySelectorAll('.field')) each.dispatchEvent(new Event('judge'));
}
