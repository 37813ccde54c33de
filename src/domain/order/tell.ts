// Puts a slip into words: the message names the step and the two facts that disagree; the reason says what happens on site.

import { endingWords } from './telling/ending.js';
import { linerWords } from './telling/liner.js';
import { safetyWords } from './telling/safety.js';
import { spiralWords } from './telling/spiral.js';
import { tellingOf, type ViolationWords, type WordsByKind } from './telling/telling.js';
import type { ViolationKind } from './violation.js';
import type { OrderSlip, StepRole, Walk } from './walk-state.js';

const wordsByKind: Partial<WordsByKind<ViolationKind>> = {
  ...safetyWords,
  ...spiralWords,
  ...linerWords,
  ...endingWords,
};

/** @throws RangeError for a kind that has its own words where it is found: several steps at once, crews, platforms. */
export function wordsFor(w: Walk, slip: OrderSlip): ViolationWords {
  const words = wordsByKind[slip.kind];
  if (!words) throw new RangeError(`"${slip.kind}" has its own words where it is found.`);
  return words(tellingOf(w, slip));
}

/** What a state of a piece is called where a conflicting step is pointed at. */
export function sayRole(kind: ViolationKind, role: StepRole): string {
  switch (role) {
    case 'other front':
      return 'the other front of the run';
    case 'comes too late':
      return 'what is missing is done only here';
    case 'same time':
      return 'may go on at the same time';
    case 'comes between':
      return 'meanwhile nobody watches';
    case 'works below':
      return 'people are below the gate here';
    case 'made it so':
      return kind === 'done twice'
        ? 'done here already'
        : kind === 'not put back'
          ? 'taken off here'
          : 'it is left so here';
  }
}
