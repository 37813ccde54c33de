// A limit that was passed, in a cell of a table: the word, and below it the days between which it was.

import type { LimitPassed } from '../../../domain/wear/passed.js';
import { element, group, type Markup } from '../../page/markup.js';
import { passedLines } from '../passed-words.js';

/** Likely, where no look showed it. */
export function passedCell(passed: LimitPassed, word = 'passed'): Markup {
  const [first, second] = passedLines(passed);
  return group(
    element('strong', {}, word),
    element(
      'span',
      { class: 'sub' },
      `${passed.by === 'reckoned' ? 'likely ' : ''}${first}`,
      element('br'),
      second,
    ),
  );
}
