// A character that nobody sees: a control character, or one that turns the direction of writing.

import type { Rule } from '../../rule.js';
import { onProblem } from '../../telling/on-problem.js';

export const hiddenCharacter: Rule = {
  code: 'TL132',
  title: 'Character that nobody can see',
  severity: 'warning',
  restsOn: [],
  why:
    'Such characters can make a line read otherwise than it stands, ' +
    'so that a reviewer agrees to a figure or a note that is not what the crew is handed; ' +
    'on pages they are shown by their numbers.',
  todo: 'Delete it; it mostly comes along when text is pasted from a page or a message.',
  given: 'plant',
  bad: '  outage Spring27 2027-04-12 to 2027-04-23 "gate «\u202E»open"',
  good: '  outage Spring27 2027-04-12 to 2027-04-23 "gate open"',
  check: onProblem('hidden character', ({ origin, name, count }) => ({
    message: `${count === 1 ? `A character that nobody can see stands here: ${name}` : `${count} characters that nobody can see stand here, the first is ${name}`}.`,
    fixes: [
      {
        title: count === 1 ? `Delete ${name}` : `Delete the ${count} characters`,
        edits: [{ origin, text: '' }],
        preferred: true,
      },
    ],
  })),
};
